//! Meshes of a transom's shape, and the places about which its moments are told: plane geometry.

use std::sync::Arc;

use sternknee::physics::strength::panel::{
    EdgeSupport, Factored, Fineness, Load, Meshed, Panel, PlateStiffness, Point, Section, Shape,
};

use super::mean_moments::one_ply;

/// A V bottom with flared sides, without and with a cutout; a flat bottom; one whose sides stand upright. Invented.
const SHAPES: [Shape; 5] = [
    Shape { chine: [0.9, 0.3], corner: [1.1, 0.8], cutout: None },
    Shape { chine: [0.9, 0.3], corner: [1.1, 0.8], cutout: Some([0.4, 0.55]) },
    Shape { chine: [0.8, 0.0], corner: [0.9, 0.7], cutout: Some([0.35, 0.5]) },
    Shape { chine: [0.8, 0.1], corner: [0.8, 0.7], cutout: Some([0.3, 0.45]) },
    Shape { chine: [1.1, 0.35], corner: [0.95, 0.75], cutout: Some([0.5, 0.6]) },
];

fn panel(shape: Shape, edges: Vec<EdgeSupport>) -> Factored {
    let panel = Panel {
        outline: shape.outline(),
        edges,
        section: Section::stiffness(PlateStiffness::isotropic(9e9, 0.3, 0.04)),
        regions: Vec::new(),
        lines: Vec::new(),
        beds: Vec::new(),
    };
    panel.factored(&Arc::new(Meshed::of(shape, Fineness { size: 0.12, width: 0.1 }))).expect("a sound shape")
}

/// By trapezia: up to the chine, on to the corners, less the cutout.
fn area(shape: &Shape) -> f64 {
    let ([chine, rise], [corner, top]) = (shape.chine, shape.corner);
    let cut = shape.cutout.map_or(0.0, |[half, height]| 2.0 * half * (top - height));
    chine * rise + (top - rise) * (chine + corner) - cut
}

/// Whether a place is on the transom: above its bottom, within its sides, under its top.
fn on(shape: &Shape, [y, z]: Point) -> bool {
    let ([chine, rise], [corner, top]) = (shape.chine, shape.corner);
    let half = chine + (corner - chine) * (z - rise) / (top - rise);
    let height = shape.cutout.filter(|[half, _]| y.abs() < half - 1e-9).map_or(top, |[_, height]| height);
    let bottom = y.abs() * rise / chine;
    let near = 1e-9;
    z >= bottom - near
        && z <= height + near
        && (z <= rise || y.abs() <= half + near)
        && (z >= rise || y.abs() <= chine + near)
}

fn same(p: Point, q: Point) -> bool {
    (p[0] - q[0]).hypot(p[1] - q[1]) < 1e-9
}

#[test]
fn the_triangles_of_a_transom_cover_it_and_no_more_and_are_their_own_mirror_image() {
    for shape in SHAPES {
        let factored = panel(shape, vec![EdgeSupport::Clamped; shape.outline().len()]);
        let mesh = factored.mesh();
        let covered: f64 = mesh
            .triangles
            .iter()
            .map(|t| [t[0], t[1], t[2]].map(|n| mesh.nodes[n as usize]))
            .map(|[a, b, c]| 0.5 * ((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])))
            .inspect(|part| assert!(*part > 0.0, "{shape:?}: a triangle is turned over"))
            .sum();
        assert!((covered / area(&shape) - 1.0).abs() < 1e-12, "{shape:?}: {covered} of {}", area(&shape));
        for p in &mesh.nodes {
            assert!(on(&shape, *p), "{shape:?}: {p:?}");
            assert!(mesh.nodes.iter().any(|q| same(*q, [-p[0], p[1]])), "{shape:?}: {p:?} has no image");
        }
        for corner in shape.outline() {
            assert!(mesh.nodes.iter().any(|p| same(*p, corner)), "{shape:?}: {corner:?} is no node");
        }
    }
}

/// Clamped along one side at a time, of one half, and pushed all over: what is most bent lies on the transom, and no node of it is bent more.
#[test]
fn what_is_most_bent_lies_on_the_transom_and_no_node_of_it_is_bent_more() {
    let layup = one_ply(0.3, 40.0);
    for shape in SHAPES {
        let outline = shape.outline();
        for held in (0..=outline.len() / 2).step_by(2) {
            let edges =
                (0..outline.len()).map(|i| if i == held { EdgeSupport::Clamped } else { EdgeSupport::Free }).collect();
            let factored = panel(shape, edges);
            let loaded = factored.bend(&[[Load::Pressure(1000.0)]]).expect("it is held");
            let most = factored.most_bent(&layup, &loaded);
            let (mean, stress) = most[0].as_ref().expect("it is bent");
            assert!(on(&shape, mean.at), "{shape:?} held at {held}: {:?}", mean.at);
            let nodes = factored.moments_at_nodes(&loaded[0]);
            let greatest = nodes.iter().map(|node| layup.bent(node.moment).utilisation).fold(0.0, f64::max);
            // Places stand closer than nodes; a node between them is bent a hundredth more at most.
            let part = stress.utilisation / greatest;
            assert!(part > 0.98 && part < 1.1, "{shape:?} held at {held}: {part}");
        }
    }
}
