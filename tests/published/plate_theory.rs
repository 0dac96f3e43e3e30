//! Closed forms of plate theory: patch tests, the thin limit, sandwich and orthotropic series, equilibrium.
