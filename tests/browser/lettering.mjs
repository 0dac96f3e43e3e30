// Runs in the page: pieces of lettering that lie on each other, and such as leave the page or their box.
export function lettering() {
  const found = [];
  const shown = (node) => node.checkVisibility({ opacityProperty: true, visibilityProperty: true });
  const pieces = [];
  const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walk.nextNode(); node; node = walk.nextNode()) {
    const element = node.parentElement;
    if (!node.data.trim() || element.closest("title, desc, style, .unseen") || !shown(element)) continue;
    // What is scrolled away is not seen.
    const window = element.closest(".paper, .open, pre.scroll")?.getBoundingClientRect();
    const quoted = element.closest("pre.scroll")?.getBoundingClientRect();
    const range = document.createRange();
    range.selectNodeContents(node);
    for (const box of range.getClientRects()) {
      if (box.width < 0.5 || box.height < 0.5) continue;
      if (window && (box.top + box.height / 2 > window.bottom || box.top + box.height / 2 < window.top)) continue;
      // Lines of text have room above and below their letters, which may touch.
      const trim = Math.min(box.height * 0.18, 4);
      pieces.push({ words: node.data.trim().slice(0, 40), node, left: box.left, right: Math.min(box.right, quoted?.right ?? box.right),
                    top: box.top + trim, bottom: box.bottom - trim, element });
    }
  }
  const wide = document.documentElement.clientWidth;
  // Before, after and the change between them are read side by side; a wide ledger, and numbers in both units, may be scrolled.
  for (const scroller of document.querySelectorAll(".scroll:has(table)")) {
    const [heads, both] = [scroller.querySelector("tr").textContent, /\(-?\d/.test(scroller.textContent)];
    if (heads.includes("before") && heads.includes("after") && !both && scroller.querySelector("tr").children.length <= 4 && scroller.scrollWidth > scroller.clientWidth + 1) found.push(`the table "${scroller.textContent.trim().slice(0, 40)}" is cut`);
  }
  for (const piece of pieces) {
    const scroller = piece.element.closest("figure > div, .scroll");
    const scrolls = scroller && scroller.scrollWidth > scroller.clientWidth + 1;
    if (!scrolls && (piece.left < -0.5 || piece.right > wide + 0.5)) found.push(`"${piece.words}" leaves the page`);
    const drawing = piece.element.closest("figure svg");
    if (drawing) {
      const box = drawing.getBoundingClientRect();
      if (piece.left < box.left - 1 || piece.right > box.right + 1 || piece.top < box.top - 1 || piece.bottom > box.bottom + 1)
        found.push(`"${piece.words}" leaves its drawing`);
    }
    const cell = piece.element.closest("td, th, dd, li, summary, p");
    if (cell && !drawing) {
      const box = cell.getBoundingClientRect();
      if (piece.right > box.right + 1.5 || piece.left < box.left - 1.5) found.push(`"${piece.words}" leaves its box`);
    }
  }
  pieces.sort((a, b) => a.top - b.top);
  for (let i = 0; i < pieces.length; i++) {
    for (let j = i + 1; j < pieces.length && pieces[j].top < pieces[i].bottom; j++) {
      const [a, b] = [pieces[i], pieces[j]];
      if (a.node === b.node) continue;
      const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
      const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
      if (across > 1 && down > 1) found.push(`"${a.words}" and "${b.words}" overlap`);
    }
  }
  if (document.documentElement.scrollWidth > wide + 1) found.push("the page scrolls sideways");
  return found;
}
