/** What XML 1.0 and HTML can't hold: control characters but tab and line ends, lone surrogates, and the two non-characters. */
const UNHOLDABLE = /[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu;

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

/** Foreign text made safe between tags and inside quoted attributes, in XML and HTML alike. */
export const xmlText = (text: string): string => text.replace(UNHOLDABLE, '\ufffd').replace(/[&<>"']/g, (sign) => ENTITIES[sign]!);
