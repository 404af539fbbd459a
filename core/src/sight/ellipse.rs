//! Ellipses: fitted to points, and met by rays.

use nalgebra::{Matrix3, SMatrix, SVector};

/// An ellipse in pixels.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Ellipse {
    pub x: f64,
    pub y: f64,
    /// Half axes.
    pub a: f64,
    pub b: f64,
    /// The way of `a`, radians from the x axis.
    pub turn: f64,
}

impl Ellipse {
    pub fn circle(x: f64, y: f64, r: f64) -> Self {
        Self { x, y, a: r, b: r, turn: 0.0 }
    }

    pub fn scaled(self, by: f64) -> Self {
        Self { x: self.x * by, y: self.y * by, a: self.a * by, b: self.b * by, turn: self.turn }
    }

    pub fn mean_radius(&self) -> f64 {
        (self.a * self.b).abs().sqrt()
    }

    /// How far it is from round: long over short axis.
    pub fn stretch(&self) -> f64 {
        let (long, short) = (self.a.max(self.b), self.a.min(self.b));
        if short > 0.0 { long / short } else { f64::INFINITY }
    }

    /// Distance from a point inside along a direction to the ellipse; 0 where the ray misses it.
    pub fn reach(&self, x: f64, y: f64, angle: f64) -> f64 {
        let (sin, cos) = self.turn.sin_cos();
        let (dx, dy) = (angle.cos(), angle.sin());
        let (ox, oy) = (x - self.x, y - self.y);
        let (ux, uy) = ((dx * cos + dy * sin) / self.a, (dy * cos - dx * sin) / self.b);
        let (vx, vy) = ((ox * cos + oy * sin) / self.a, (oy * cos - ox * sin) / self.b);
        let (p, q, r) = (ux * ux + uy * uy, 2.0 * (ux * vx + uy * vy), vx * vx + vy * vy - 1.0);
        let root = (q * q - 4.0 * p * r).max(0.0).sqrt();
        let reach = (root - q) / (2.0 * p);
        if reach.is_finite() { reach.max(0.0) } else { 0.0 }
    }

    /// The ellipse nearest to points in the algebraic sense.
    ///
    /// A. Fitzgibbon, M. Pilu, R. Fisher: Direct least squares fitting of ellipses (1996), in the numerically stable
    /// form of R. Halíř and J. Flusser (1998).
    pub fn fit(points: &[(f64, f64)]) -> Option<Self> {
        if points.len() < 6 {
            return None;
        }
        let n = points.len() as f64;
        let (mx, my) = points.iter().fold((0.0, 0.0), |(x, y), p| (x + p.0 / n, y + p.1 / n));
        let spread = points.iter().map(|p| (p.0 - mx).hypot(p.1 - my)).sum::<f64>() / n;
        if spread < 1e-6 {
            return None;
        }
        let (mut s1, mut s2, mut s3) = (Matrix3::zeros(), Matrix3::zeros(), Matrix3::zeros());
        for point in points {
            let (x, y) = ((point.0 - mx) / spread, (point.1 - my) / spread);
            let square = SVector::<f64, 3>::new(x * x, x * y, y * y);
            let linear = SVector::<f64, 3>::new(x, y, 1.0);
            s1 += square * square.transpose();
            s2 += square * linear.transpose();
            s3 += linear * linear.transpose();
        }
        let t = -s3.try_inverse()? * s2.transpose();
        let m = s1 + s2 * t;
        // Rows of the inverse of the constraint matrix of 4ac - b² = 1, times m.
        let m: Matrix3<f64> = SMatrix::from_rows(&[m.row(2) / 2.0, -m.row(1), m.row(0) / 2.0]);
        let mut best = None;
        for value in m.complex_eigenvalues().iter().filter(|value| value.im.abs() < 1e-9) {
            // Its vector: the kernel of m - value, by the largest cross product of two rows.
            let shifted = m - Matrix3::identity() * value.re;
            let rows = [shifted.row(0), shifted.row(1), shifted.row(2)].map(|row| row.transpose());
            let [r0, r1, r2] = rows;
            let vector = [r0.cross(&r1), r0.cross(&r2), r1.cross(&r2)]
                .into_iter()
                .max_by(|a, b| a.norm().total_cmp(&b.norm()))
                .filter(|vector| vector.norm() > 0.0)?;
            if 4.0 * vector.x * vector.z - vector.y * vector.y > 0.0 {
                best = Some(vector);
            }
        }
        let square = best?;
        let linear = t * square;
        Self::of_conic([square.x, square.y, square.z, linear.x, linear.y, linear.z]).map(|e| Self {
            x: e.x * spread + mx,
            y: e.y * spread + my,
            a: e.a * spread,
            b: e.b * spread,
            turn: e.turn,
        })
    }

    /// The ellipse ax² + bxy + cy² + dx + ey + f = 0.
    fn of_conic([a, b, c, d, e, f]: [f64; 6]) -> Option<Self> {
        let below = b * b - 4.0 * a * c;
        if below >= 0.0 {
            return None;
        }
        let (x, y) = ((2.0 * c * d - b * e) / below, (2.0 * a * e - b * d) / below);
        let turn = 0.5 * b.atan2(a - c);
        let middle = a * x * x + b * x * y + c * y * y + d * x + e * y + f;
        let (sin, cos) = turn.sin_cos();
        let along = a * cos * cos + b * cos * sin + c * sin * sin;
        let across = a * sin * sin - b * cos * sin + c * cos * cos;
        let (a, b) = ((-middle / along).sqrt(), (-middle / across).sqrt());
        (a.is_finite() && b.is_finite() && a > 0.0 && b > 0.0).then_some(Self { x, y, a, b, turn })
    }
}

#[cfg(test)]
mod tests {
    use super::Ellipse;

    #[test]
    fn an_ellipse_is_found_again_from_its_points() {
        let truth = Ellipse { x: 310.0, y: 205.0, a: 180.0, b: 150.0, turn: 0.4 };
        let points: Vec<_> = (0..60)
            .map(|n| {
                let angle = f64::from(n) * std::f64::consts::TAU / 60.0;
                let reach = truth.reach(300.0, 200.0, angle);
                (300.0 + reach * angle.cos(), 200.0 + reach * angle.sin())
            })
            .collect();
        let found = Ellipse::fit(&points).unwrap();
        for (found, truth) in [(found.x, truth.x), (found.y, truth.y)] {
            assert!((found - truth).abs() < 1e-6, "{found} {truth}");
        }
        assert!((found.mean_radius() - truth.mean_radius()).abs() < 1e-6);
        assert!((found.stretch() - 1.2).abs() < 1e-6);
    }

    #[test]
    fn points_on_a_line_are_no_ellipse() {
        let points: Vec<_> = (0..20).map(|n| (f64::from(n), 2.0 * f64::from(n))).collect();
        assert!(Ellipse::fit(&points).is_none_or(|e| e.stretch() > 50.0));
        assert!(Ellipse::fit(&[(1.0, 1.0); 10]).is_none());
    }
}
