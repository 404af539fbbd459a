use crate::source::{Grade, Source};

/// Where [`order`] comes from where the maker prints none.
pub const OPPOSITE_FIRST: Source = Source::read(Grade::Design, "opposite first, as manuals say");

/// The order in which the nuts of a wheel are tightened: clock positions seen
/// from outside, 1 at the top, running clockwise. For 3 to 12 studs; `None` beyond.
///
/// Five is seen in a maker's figure up to its mirror image, six is described in
/// words in a manual; the rest are a design choice (grade D) by the manuals'
/// rule "opposite first": with an even count each second nut is the opposite
/// one, with an odd count the next lies just short of opposite. The maker's own
/// order goes before all of these.
///
/// ```
/// assert_eq!(lugbook::fastening::order(5), Some(vec![1, 3, 5, 2, 4]));
/// assert_eq!(lugbook::fastening::order(2), None);
/// ```
pub fn order(studs: u8) -> Option<Vec<u8>> {
    let order: &[u8] = match studs {
        3 => &[1, 2, 3],
        4 => &[1, 3, 2, 4],
        5 => &[1, 3, 5, 2, 4],
        6 => &[1, 4, 2, 5, 3, 6],
        7 => &[1, 4, 7, 3, 6, 2, 5],
        8 => &[1, 5, 3, 7, 2, 6, 4, 8],
        9 => &[1, 5, 9, 4, 8, 3, 7, 2, 6],
        10 => &[1, 6, 3, 8, 5, 10, 7, 2, 9, 4],
        11 => &[1, 6, 11, 5, 10, 4, 9, 3, 8, 2, 7],
        12 => &[1, 7, 4, 10, 2, 8, 5, 11, 3, 9, 6, 12],
        _ => return None,
    };
    Some(order.to_vec())
}
