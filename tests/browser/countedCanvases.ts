/** Runs in a page before its own scripts: remembers every canvas as long as anything else holds it. Each is a texture of the map, or the map. */
export const COUNT_CANVASES = `
  window.madeCanvases = [];
  const create = Document.prototype.createElement;
  Document.prototype.createElement = function (name, ...more) {
    const made = create.call(this, name, ...more);
    if (String(name).toLowerCase() === 'canvas') window.madeCanvases.push(new WeakRef(made));
    return made;
  };
`;

/** How many of them are still held, as an expression. */
export const HELD_CANVASES = 'window.madeCanvases.filter((one) => one.deref()).length';
