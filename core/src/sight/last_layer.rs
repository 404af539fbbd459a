//! The recognizer's last layer, cut to the characters that a sidewall can bear.
//!
//! The model tells 18,710 characters apart by one product with a table of that many columns; on a sidewall some seventy
//! can stand. So the model is run up to that product, and the product is made here with the columns of those seventy
//! alone. What comes out is how likely each of them is among them. The table is read out of the model's own bytes when
//! it is loaded; the file stays as it was, and so does its digest.

/// What stands before the last product, by its name in the model: one row of values for each column of its table, one
/// place after the other along it. (The transposed rows have a name too, but the runtime makes them part of the product.)
pub(super) const BEFORE: &str = "p2o.pd_op.squeeze.0.0";
/// The table and what is added, by their names.
const TABLE: &str = "linear_8.w_0";
const ADDED: &str = "linear_8.b_0";

/// Columns of the last layer.
#[derive(Debug, Clone)]
pub(super) struct LastLayer {
    /// For each class that was kept: its column, and what is added.
    columns: Vec<(Vec<f32>, f32)>,
}

impl LastLayer {
    /// Takes the columns of these classes out of a model's bytes.
    pub fn cut(model: &[u8], classes: &[usize]) -> Option<Self> {
        // ModelProto.graph is field 7; GraphProto.initializer is field 5 (ONNX's onnx.proto).
        let graph = fields(model).find_map(|(field, bytes)| (field == 7).then_some(bytes))?;
        let tensor = |name: &str| {
            fields(graph).filter(|(field, _)| *field == 5).map(|(_, bytes)| bytes).find(|tensor| {
                // TensorProto.name is field 8.
                fields(tensor).any(|(field, bytes)| field == 8 && bytes == name.as_bytes())
            })
        };
        // TensorProto.raw_data is field 9, little-endian.
        let raw = |tensor: &[u8]| -> Option<Vec<f32>> {
            let (_, bytes) = fields(tensor).find(|(field, _)| *field == 9)?;
            Some(bytes.chunks_exact(4).filter_map(|four| Some(f32::from_le_bytes(four.try_into().ok()?))).collect())
        };
        let (table, added) = (raw(tensor(TABLE)?)?, raw(tensor(ADDED)?)?);
        let all = added.len();
        if all == 0 || table.len() % all != 0 {
            return None;
        }
        let column = |class: &usize| {
            let added = *added.get(*class)?;
            Some((table.iter().skip(*class).step_by(all).copied().collect(), added))
        };
        Some(Self { columns: classes.iter().map(column).collect::<Option<_>>()? })
    }

    /// How many values stand before it at each place.
    pub fn width(&self) -> usize {
        self.columns.first().map_or(0, |(column, _)| column.len())
    }

    /// How likely each class is at a place, among those that were kept; `before` holds the values there.
    pub fn likely(&self, before: &[f32]) -> Vec<f32> {
        let mut values: Vec<f32> = self
            .columns
            .iter()
            .map(|(column, added)| column.iter().zip(before).map(|(a, b)| a * b).sum::<f32>() + added)
            .collect();
        let most = values.iter().copied().fold(f32::MIN, f32::max);
        values.iter_mut().for_each(|value| *value = (*value - most).exp());
        let sum: f32 = values.iter().sum();
        values.iter_mut().for_each(|value| *value /= sum);
        values
    }
}

/// The fields of a message that hold bytes, with their numbers (Protocol Buffers, encoding).
fn fields(mut message: &[u8]) -> impl Iterator<Item = (u64, &[u8])> {
    std::iter::from_fn(move || {
        loop {
            let key = varint(&mut message)?;
            let size = match key & 7 {
                0 => {
                    varint(&mut message)?;
                    continue;
                }
                1 => 8,
                2 => usize::try_from(varint(&mut message)?).ok()?,
                5 => 4,
                _ => return None,
            };
            let (bytes, rest) = message.split_at_checked(size)?;
            message = rest;
            if key & 7 == 2 {
                return Some((key >> 3, bytes));
            }
        }
    })
}

fn varint(message: &mut &[u8]) -> Option<u64> {
    let mut value = 0_u64;
    for shift in (0..64).step_by(7) {
        let (&byte, rest) = message.split_first()?;
        *message = rest;
        value |= u64::from(byte & 0x7f) << shift;
        if byte < 0x80 {
            return Some(value);
        }
    }
    None
}

#[cfg(test)]
mod tests {
    use super::LastLayer;

    fn field(number: u8, bytes: &[u8]) -> Vec<u8> {
        [&[number << 3 | 2, u8::try_from(bytes.len()).unwrap()][..], bytes].concat()
    }

    fn tensor(name: &str, values: &[f32]) -> Vec<u8> {
        let raw: Vec<u8> = values.iter().flat_map(|value| value.to_le_bytes()).collect();
        // Its dimensions come first, as numbers.
        field(5, &[&[0x08, 0x02][..], &field(8, name.as_bytes()), &field(9, &raw)].concat())
    }

    #[test]
    fn a_cut_layer_gives_the_likelihoods_of_the_whole_one_among_those_kept() {
        // Two values before, four classes.
        let table = [1.0, 2.0, 3.0, 4.0, 0.5, 0.25, -1.0, 0.0];
        let graph = [tensor("linear_8.w_0", &table), tensor("linear_8.b_0", &[0.1, 0.2, 0.3, 0.4])].concat();
        let layer = LastLayer::cut(&field(7, &graph), &[0, 2]).unwrap();
        assert_eq!(layer.width(), 2);
        let whole: Vec<f32> = (0..4).map(|n| [0.1, 0.2, 0.3, 0.4][n] + 0.3 * table[n] - 0.7 * table[n + 4]).collect();
        let likely = layer.likely(&[0.3, -0.7]);
        let share = whole[0].exp() / (whole[0].exp() + whole[2].exp());
        assert!((likely[0] - share).abs() < 1e-6 && (likely[1] - 1.0 + share).abs() < 1e-6, "{likely:?} {share}");
    }

    #[test]
    fn bytes_that_hold_no_such_layer_are_refused() {
        for bytes in [&b""[..], b"nothing", &[0x3a, 0xff, 0xff], &field(7, &tensor("linear_8.w_0", &[1.0]))] {
            assert!(LastLayer::cut(bytes, &[0]).is_none());
        }
    }
}
