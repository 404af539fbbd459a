//! HTML of our own pages, read back into elements.

use html5gum::{Token, Tokenizer};

/// Elements that have no end tag.
const VOID: [&str; 5] = ["br", "img", "meta", "hr", "link"];

/// A part of a page.
#[derive(Debug, Clone)]
pub(super) enum Node {
    Text(String),
    Element(Element),
}

/// An element with what is in it.
#[derive(Debug, Clone, Default)]
pub(super) struct Element {
    pub name: String,
    attributes: Vec<(String, String)>,
    pub nodes: Vec<Node>,
}

impl Element {
    /// An attribute; names in lower case.
    pub fn get(&self, name: &str) -> Option<&str> {
        self.attributes.iter().find(|(known, _)| known == name).map(|(_, value)| value.as_str())
    }

    pub fn set(&mut self, name: &str, value: &str) {
        self.attributes.retain(|(known, _)| known != name);
        self.attributes.push((name.to_owned(), value.to_owned()));
    }

    pub fn has_class(&self, class: &str) -> bool {
        self.get("class").is_some_and(|all| all.split_whitespace().any(|one| one == class))
    }

    /// A coordinate; nothing when it is missing or no number.
    pub fn number(&self, name: &str) -> f64 {
        self.get(name).and_then(|text| text.parse().ok()).unwrap_or_default()
    }

    pub fn elements(&self) -> impl Iterator<Item = &Element> {
        self.nodes.iter().filter_map(|node| match node {
            Node::Element(element) => Some(element),
            Node::Text(_) => None,
        })
    }

    pub fn child(&self, name: &str) -> Option<&Element> {
        self.elements().find(|element| element.name == name)
    }

    /// The first element of this name in here, at any depth.
    pub fn find(&self, name: &str) -> Option<&Element> {
        self.elements().find_map(|element| if element.name == name { Some(element) } else { element.find(name) })
    }

    /// All text in here, spaces set to one.
    pub fn text(&self) -> String {
        let mut out = String::new();
        self.gather(&mut out);
        out.split_ascii_whitespace().collect::<Vec<_>>().join(" ")
    }

    fn gather(&self, out: &mut String) {
        for node in &self.nodes {
            match node {
                Node::Text(text) => out.push_str(text),
                Node::Element(element) => element.gather(out),
            }
        }
    }
}

/// Reads a page. An end tag without a beginning is passed over, and what is left open ends with the page.
pub(super) fn read(html: &str) -> Element {
    let mut open: Vec<Element> = vec![Element::default()];
    for Ok(token) in Tokenizer::new(html) {
        match token {
            Token::StartTag(tag) => {
                let name = text(&tag.name);
                let attributes = tag.attributes.iter().map(|(name, value)| (text(name), text(value))).collect();
                let element = Element { name, attributes, nodes: Vec::new() };
                if VOID.contains(&element.name.as_str()) || tag.self_closing {
                    put(&mut open, Node::Element(element));
                } else {
                    open.push(element);
                }
            }
            Token::EndTag(tag) => {
                let name = text(&tag.name);
                if open.iter().skip(1).any(|element| element.name == name) {
                    while let Some(element) = open.pop() {
                        let found = element.name == name;
                        put(&mut open, Node::Element(element));
                        if found {
                            break;
                        }
                    }
                }
            }
            Token::String(string) => put(&mut open, Node::Text(text(&string))),
            _ => {}
        }
    }
    while open.len() > 1 {
        if let Some(element) = open.pop() {
            put(&mut open, Node::Element(element));
        }
    }
    open.pop().unwrap_or_default()
}

fn put(open: &mut [Element], node: Node) {
    if let Some(last) = open.last_mut() {
        last.nodes.push(node);
    }
}

fn text(bytes: &[u8]) -> String {
    String::from_utf8_lossy(bytes).into_owned()
}
