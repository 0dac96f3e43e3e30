use super::{Case, Float, NoFloat}; use crate::working::Part; 
