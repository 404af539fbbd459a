//! The two models that find and read lettering, loaded from bytes.

use std::fmt;
use std::sync::Arc;

use rten::{Model, ModelOptions, NodeId, RunOptions, ThreadPool, ValueOrView};
use rten_tensor::NdTensor;
use rten_tensor::prelude::*;

use super::last_layer::{BEFORE, LastLayer};
use super::picture::Plane;
use crate::ident::Digest;

/// What a character can be on a sidewall; everything else that the recognizer knows is left out.
const LETTERING: &str = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789/-+.()& ";

/// BLAKE3 digests of the two models whose figures are known: PP-OCRv6 detection and recognition, small, as ONNX.
const DETECTOR: &str = "7c78ed85d15e4f17d2d84dc1320dc27e7c4d99f8f2a5f2620873359e32d981a3";
const RECOGNIZER: &str = "570fcee388d4475f46627fc4da2ce845e03af97217d623a7798ca1e7a89e5fa3";

/// The bytes are not the two models that this program reads with.
///
/// ```
/// use lugbook::sight::{Models, NotTheModels};
/// assert_eq!(Models::load(vec![1, 2, 3], vec![]).err(), Some(NotTheModels));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct NotTheModels;

/// What finds lettering and reads it.
pub struct Models {
    detector: Model,
    recognizer: Model,
    /// Its last layer, for the characters that are looked at, and what stands before it.
    last: LastLayer,
    before: NodeId,
    /// The characters that are looked at; the first stands for "none".
    characters: Vec<char>,
    digest: Digest,
    /// One thread or all of the machine's.
    pool: Option<Arc<ThreadPool>>,
}

impl fmt::Debug for Models {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Models").field("digest", &self.digest).finish_non_exhaustive()
    }
}

/// How likely each character is at each place along a line.
#[derive(Debug, Clone, Default, PartialEq)]
pub(super) struct Frames {
    /// One row of the likelihoods of "none" and of each character, for each place.
    pub rows: Vec<Vec<f32>>,
}

fn load(bytes: Vec<u8>) -> Result<Model, NotTheModels> {
    // Only what the two models are made of, so that a phone's library stays small.
    let operators = rten::op_registry!(
        Add,
        AveragePool,
        BatchNormalization,
        Concat,
        Conv,
        ConvTranspose,
        Div,
        Erf,
        GlobalAveragePool,
        HardSigmoid,
        Identity,
        MatMul,
        MaxPool,
        Mul,
        Pow,
        ReduceMean,
        Relu,
        Reshape,
        Resize,
        Shape,
        Sigmoid,
        Slice,
        Softmax,
        Sqrt,
        Squeeze,
        Sub,
        Transpose,
        Unsqueeze
    );
    let mut options = ModelOptions::with_ops(operators);
    options.prepack_weights(true);
    options.load(bytes).map_err(|_| NotTheModels)
}

impl Models {
    /// Loads a detector and a recognizer of PP-OCR's form, as ONNX: the first takes three planes of a picture and gives
    /// how likely each pixel is lettering; the second takes a line 48 pixels high and gives how likely each character
    /// is along it, its characters being named in its own notes.
    ///
    /// # Errors
    /// When the bytes are not these models.
    ///
    /// ```
    /// use lugbook::sight::Models;
    /// assert!(Models::load(b"no model".to_vec(), b"neither".to_vec()).is_err());
    /// ```
    pub fn load(detector: Vec<u8>, recognizer: Vec<u8>) -> Result<Self, NotTheModels> {
        // Foreign bytes are not even parsed: a parser of models is no place for what strangers wrote.
        let found = [&detector, &recognizer].map(|bytes| Digest::of(bytes).to_string());
        if found != [DETECTOR, RECOGNIZER] {
            return Err(NotTheModels);
        }
        let digest =
            Digest::of(&[Digest::of(&detector).as_bytes().as_slice(), Digest::of(&recognizer).as_bytes()].concat());
        let detector = load(detector)?;
        let whole = recognizer.clone();
        let recognizer = load(recognizer)?;
        let before = recognizer.find_node(BEFORE).ok_or(NotTheModels)?;
        let named = recognizer.metadata().get("character").ok_or(NotTheModels)?;
        let (mut classes, mut characters) = (vec![0], vec!['\0']);
        let mut take = |class: usize, text: &str| {
            let mut chars = text.chars();
            if let (Some(one), None) = (chars.next(), chars.next())
                && LETTERING.contains(one)
            {
                classes.push(class);
                characters.push(one);
            }
        };
        let mut last = 0;
        for (at, text) in named.lines().enumerate() {
            last = at + 1;
            take(last, text);
        }
        // The space stands behind all named characters.
        take(last + 1, " ");
        if characters.len() < 37 {
            return Err(NotTheModels);
        }
        let last = LastLayer::cut(&whole, &classes).ok_or(NotTheModels)?;
        Ok(Self { detector, recognizer, last, before, characters, digest, pool: None })
    }

    /// The same, on so many threads; without it, as many as the machine has cores.
    #[must_use]
    pub fn on_threads(self, threads: usize) -> Self {
        Self { pool: Some(Arc::new(ThreadPool::with_num_threads(threads.max(1)))), ..self }
    }

    /// What names these models in a record: a digest over both.
    pub fn digest(&self) -> Digest {
        self.digest
    }

    /// The characters of a row of [`Frames`]; the first stands for "none".
    pub(super) fn characters(&self) -> &[char] {
        &self.characters
    }

    fn run(&self, model: &Model, input: NdTensor<f32, 4>, until: NodeId) -> Option<rten::Value> {
        let from = *model.input_ids().first()?;
        let options = RunOptions::default().with_thread_pool(self.pool.clone());
        model.run(vec![(from, ValueOrView::from(input))], &[until], Some(options)).ok()?.into_iter().next()
    }

    /// How likely each pixel of a tile is lettering, 0 to 1. The sides must be multiples of 32.
    pub(super) fn lettering(&self, width: usize, height: usize, levels: &[u8]) -> Option<Plane> {
        // Means and spreads of the pictures that the model was trained on.
        const MEAN: [f32; 3] = [0.485, 0.456, 0.406];
        const SPREAD: [f32; 3] = [0.229, 0.224, 0.225];
        let mut input = Vec::with_capacity(levels.len() * 3);
        for (mean, spread) in MEAN.iter().zip(SPREAD) {
            input.extend(levels.iter().map(|&level| (f32::from(level) / 255.0 - mean) / spread));
        }
        let input = NdTensor::try_from_data([1, 3, height, width], input).ok()?;
        let output: NdTensor<f32, 4> =
            self.run(&self.detector, input, *self.detector.output_ids().first()?)?.try_into().ok()?;
        let [_, _, rows, columns] = output.shape();
        Some(Plane { width: columns, height: rows, values: output.to_vec() })
    }

    /// How likely each character is along a line that is 48 pixels high.
    pub(super) fn characters_along(&self, width: usize, levels: &[u8]) -> Option<Frames> {
        let mut input = Vec::with_capacity(levels.len() * 3);
        for _ in 0..3 {
            input.extend(levels.iter().map(|&level| f32::from(level) / 127.5 - 1.0));
        }
        let input = NdTensor::try_from_data([1, 3, 48, width], input).ok()?;
        let output: NdTensor<f32, 3> = self.run(&self.recognizer, input, self.before)?.try_into().ok()?;
        let [_, values, places] = output.shape();
        if values != self.last.width() {
            return None;
        }
        let all = output.to_vec();
        let before = |place: usize| -> Vec<f32> { all.iter().skip(place).step_by(places.max(1)).copied().collect() };
        Some(Frames { rows: (0..places).map(|place| self.last.likely(&before(place))).collect() })
    }
}
