//! The changes that can be made in a file: an operator replaced, a negation dropped, a guard fixed, or a
//! function that returns at once.

use std::fmt;
use std::ops::Range;

use syn::spanned::Spanned;
use syn::visit::{self, Visit};

use crate::trouble::{Fallible, Trouble};

/// One small change to one file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Mutation {
    pub(super) file: String,
    pub(super) line: usize,
    /// The function it is in.
    pub(super) within: String,
    pub(super) edit: Edit,
}

/// Where a change is made and what it does. Ranges count the bytes of the file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Edit {
    /// `left op right` with another operator.
    Operator {
        whole: Range<usize>,
        left: Range<usize>,
        right: Range<usize>,
        from: String,
        to: &'static str,
    },
    /// A unary operator left out.
    Dropped {
        whole: Range<usize>,
        inner: Range<usize>,
        from: char,
    },
    /// The guard of an arm, always true or never.
    Guard { whole: Range<usize>, to: bool },
    /// A function that returns this at once; the place is the first byte of its body.
    Returns { at: usize, value: &'static str },
}

impl Edit {
    /// The range that it replaces.
    pub(super) fn range(&self) -> Range<usize> {
        match self {
            Self::Operator { whole, .. }
            | Self::Dropped { whole, .. }
            | Self::Guard { whole, .. } => whole.clone(),
            Self::Returns { at, .. } => *at..*at,
        }
    }
}

impl fmt::Display for Mutation {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}:{} in {}: ", self.file, self.line, self.within)?;
        match &self.edit {
            Edit::Operator { from, to, .. } => write!(f, "`{from}` becomes `{to}`"),
            Edit::Dropped { from, .. } => write!(f, "`{from}` is left out"),
            Edit::Guard { to, .. } => write!(f, "the guard is always {to}"),
            Edit::Returns { value: "", .. } => write!(f, "it returns at once"),
            Edit::Returns { value, .. } => write!(f, "it returns `{value}`"),
        }
    }
}

/// The changes that can be made in a file, in the order of their places.
pub(super) fn changes_in(file: &str, text: &str) -> Fallible<Vec<Mutation>> {
    let parsed = syn::parse_file(text).map_err(|error| {
        Trouble::new(
            format!("{file} is not valid Rust: {error}"),
            "build the project first, which says more.",
        )
    })?;
    let mut finder = Finder {
        file,
        text,
        within: Vec::new(),
        found: Vec::new(),
    };
    finder.visit_file(&parsed);
    finder.found.sort_by_key(|change| change.edit.range().start);
    Ok(finder.found)
}

struct Finder<'a> {
    file: &'a str,
    text: &'a str,
    within: Vec<String>,
    found: Vec<Mutation>,
}

impl Finder<'_> {
    fn add(&mut self, edit: Edit) {
        // A line comment within the code would swallow the rest of the line that is written.
        let code = &self.text[edit.range()];
        let (Some(within), false) = (self.within.last(), code.contains("//")) else {
            return;
        };
        self.found.push(Mutation {
            file: self.file.to_owned(),
            line: self.text[..edit.range().start].matches('\n').count() + 1,
            within: within.clone(),
            edit,
        });
    }

    /// A function of which the body can be changed. Constant ones are evaluated by the compiler, where there
    /// is no environment.
    fn function(&mut self, signature: &syn::Signature, body: &syn::Block) {
        if signature.constness.is_some() {
            return;
        }
        self.within.push(signature.ident.to_string());
        let at = body.brace_token.span.open().byte_range().end;
        for value in values_of(&signature.output) {
            self.add(Edit::Returns { at, value });
        }
        visit::visit_block(self, body);
        self.within.pop();
    }
}

/// What a function of this type could return instead.
fn values_of(output: &syn::ReturnType) -> &'static [&'static str] {
    let syn::ReturnType::Type(_, of) = output else {
        return &[""];
    };
    match &**of {
        syn::Type::Path(path) => {
            let Some(last) = path.path.segments.last() else {
                return &[];
            };
            match last.ident.to_string().as_str() {
                "bool" => &["true", "false"],
                "f64" => &["0.0", "1.0", "-1.0"],
                "u8" | "u16" | "u32" | "u64" | "usize" | "i8" | "i32" | "i64" => &["0", "1"],
                "String" => &["String::new()"],
                "Option" => &["None"],
                "Vec" => &["Vec::new()"],
                _ => &[],
            }
        }
        syn::Type::Reference(of) => match &*of.elem {
            syn::Type::Path(path) if path.path.is_ident("str") => &["\"\""],
            syn::Type::Slice(_) => &["&[]"],
            _ => &[],
        },
        _ => &[],
    }
}

/// Operators that stand in for another.
fn instead_of(op: &syn::BinOp) -> &'static [&'static str] {
    use syn::BinOp as B;
    match op {
        B::Add(_) => &["-", "*"],
        B::Sub(_) | B::Mul(_) => &["+", "/"],
        B::Div(_) => &["*"],
        B::Rem(_) => &["/"],
        B::And(_) => &["||"],
        B::Or(_) => &["&&"],
        B::BitAnd(_) => &["|"],
        B::BitOr(_) => &["&"],
        B::Eq(_) => &["!="],
        B::Ne(_) => &["=="],
        B::Lt(_) => &["==", ">"],
        B::Gt(_) => &["==", "<"],
        B::Le(_) => &[">"],
        B::Ge(_) => &["<"],
        B::AddAssign(_) => &["-="],
        B::SubAssign(_) => &["+="],
        B::MulAssign(_) => &["/="],
        B::DivAssign(_) => &["*="],
        _ => &[],
    }
}

/// Whether a condition binds names with `let`, so that it cannot stand in brackets.
fn binds(expression: &syn::Expr) -> bool {
    match expression {
        syn::Expr::Let(_) => true,
        syn::Expr::Binary(of) => binds(&of.left) || binds(&of.right),
        _ => false,
    }
}

fn is_for_tests(attributes: &[syn::Attribute]) -> bool {
    attributes.iter().any(|a| {
        a.path().is_ident("test")
            || a.path().is_ident("cfg")
                && matches!(&a.meta, syn::Meta::List(list) if list.tokens.to_string() == "test")
    })
}

impl<'ast> Visit<'ast> for Finder<'_> {
    fn visit_item_mod(&mut self, item: &'ast syn::ItemMod) {
        if !is_for_tests(&item.attrs) {
            visit::visit_item_mod(self, item);
        }
    }

    fn visit_item_fn(&mut self, item: &'ast syn::ItemFn) {
        if !is_for_tests(&item.attrs) {
            self.function(&item.sig, &item.block);
        }
    }

    fn visit_impl_item_fn(&mut self, item: &'ast syn::ImplItemFn) {
        if !is_for_tests(&item.attrs) {
            self.function(&item.sig, &item.block);
        }
    }

    fn visit_trait_item_fn(&mut self, item: &'ast syn::TraitItemFn) {
        if let Some(body) = &item.default {
            self.function(&item.sig, body);
        }
    }

    // What the compiler evaluates has no environment.
    fn visit_item_const(&mut self, _: &'ast syn::ItemConst) {}
    fn visit_item_static(&mut self, _: &'ast syn::ItemStatic) {}
    fn visit_impl_item_const(&mut self, _: &'ast syn::ImplItemConst) {}
    fn visit_type(&mut self, _: &'ast syn::Type) {}
    fn visit_pat(&mut self, _: &'ast syn::Pat) {}
    fn visit_generic_argument(&mut self, _: &'ast syn::GenericArgument) {}
    fn visit_expr_const(&mut self, _: &'ast syn::ExprConst) {}

    fn visit_expr_repeat(&mut self, of: &'ast syn::ExprRepeat) {
        self.visit_expr(&of.expr);
    }

    fn visit_arm(&mut self, arm: &'ast syn::Arm) {
        if let Some((_, guard)) = &arm.guard
            && !binds(guard)
        {
            for to in [true, false] {
                let whole = guard.span().byte_range();
                self.add(Edit::Guard { whole, to });
            }
        }
        visit::visit_arm(self, arm);
    }

    fn visit_expr_binary(&mut self, of: &'ast syn::ExprBinary) {
        if !binds(&of.left) && !binds(&of.right) {
            for to in instead_of(&of.op) {
                let op = of.op.span().byte_range();
                self.add(Edit::Operator {
                    whole: of.span().byte_range(),
                    left: of.left.span().byte_range(),
                    right: of.right.span().byte_range(),
                    from: self.text[op].to_owned(),
                    to,
                });
            }
        }
        visit::visit_expr_binary(self, of);
    }

    fn visit_expr_unary(&mut self, of: &'ast syn::ExprUnary) {
        let from = match of.op {
            syn::UnOp::Not(_) => '!',
            syn::UnOp::Neg(_) => '-',
            _ => return visit::visit_expr_unary(self, of),
        };
        self.add(Edit::Dropped {
            whole: of.span().byte_range(),
            inner: of.expr.span().byte_range(),
            from,
        });
        visit::visit_expr_unary(self, of);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn lines(text: &str) -> Vec<String> {
        let found = changes_in("f.rs", text).unwrap();
        found.iter().map(Mutation::to_string).collect()
    }

    #[test]
    fn operators_negations_guards_and_bodies_are_found() {
        let text =
            "fn f(a: f64) -> bool {\n match a { x if x < 1.0 => !g(), _ => a + 1.0 > 2.0 }\n}";
        assert_eq!(
            lines(text),
            [
                "f.rs:1 in f: it returns `true`",
                "f.rs:1 in f: it returns `false`",
                "f.rs:2 in f: the guard is always true",
                "f.rs:2 in f: the guard is always false",
                "f.rs:2 in f: `<` becomes `==`",
                "f.rs:2 in f: `<` becomes `>`",
                "f.rs:2 in f: `!` is left out",
                "f.rs:2 in f: `>` becomes `==`",
                "f.rs:2 in f: `>` becomes `<`",
                "f.rs:2 in f: `+` becomes `-`",
                "f.rs:2 in f: `+` becomes `*`",
            ]
        );
    }

    #[test]
    fn constants_tests_types_and_conditions_that_bind_are_left_alone() {
        for text in [
            "const A: usize = 1 + 1;",
            "const fn f() -> bool { 1 < 2 }",
            "#[cfg(test)] mod tests { fn f() -> bool { 1 < 2 } }",
            "#[test] fn f() { assert!(1 < 2) }",
            "struct S { a: [u8; 1 + 1] }",
        ] {
            assert!(lines(text).is_empty(), "{text}");
        }
        let bound = "fn f() { if let Some(x) = g() && x { } }";
        assert_eq!(lines(bound), ["f.rs:1 in f: it returns at once"]);
        assert!(changes_in("f.rs", "fn (").is_err());
    }
}
