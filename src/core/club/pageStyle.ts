/** Paper, ink, and the colour of sound for what was walked. Fits A4 and Letter; a table's row is not torn over two sheets. The tenth
 * column of the runs says in sentences what is wrong with one: it gets room, so that table and tracks stay on one sheet. */
export const PAGE_STYLE = `
:root { --paper: #f4efe3; --line: #cfc6b1; --ink: #1f2a2c; --ink-2: #56605e; --sound: #c2410c; --truth: #0f5e78; }
@page { margin: 14mm; }
* { box-sizing: border-box; }
body { margin: 0; background: var(--paper); color: var(--ink); font: 15px/1.4 "Atkinson Hyperlegible Next", "Atkinson Hyperlegible", Verdana, sans-serif; }
main { max-width: 62rem; margin: 0 auto; padding: 24px 16px; }
h1 { font-size: 30px; margin: 0; } h2 { font-size: 24px; margin: 28px 0 4px; }
p { margin: 4px 0 10px; } .quiet, .quiet td { color: var(--ink-2); font-size: 12.5px; } .next { font-size: 17px; }
.note { border-left: 3px solid var(--sound); padding-left: 10px; }
table { width: 100%; border-collapse: collapse; margin: 8px 0 14px; font-size: 12.5px; }
th, td { text-align: left; vertical-align: top; padding: 4px 8px 4px 0; border-bottom: 1px solid var(--line); overflow-wrap: break-word; }
td { max-width: 16rem; } td:nth-child(10) { min-width: 12rem; } .scroll { overflow-x: auto; }
th { font-weight: 600; } .n { text-align: right; font-variant-numeric: tabular-nums; } td.n { padding-right: 14px; } th.n { padding-right: 14px; }
tr, figure, h2 { break-inside: avoid; } h2, h2 + p { break-after: avoid; } thead { display: table-header-group; }
figure { margin: 12px 0; } svg { width: 100%; max-width: 130mm; height: auto; } figcaption { color: var(--ink-2); font-size: 12.5px; }
@media print { svg { max-width: 110mm; } .scroll { overflow: visible; } table { min-width: 0; } body { background: #fff; } main { max-width: none; padding: 0; } }
@media screen and (max-width: 700px) { table { min-width: 44rem; } }
`;
