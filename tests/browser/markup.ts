const HIT = 'hit()';
/** Ways in which a text becomes script where a page takes it for markup, each short enough for a title of 60 letters. */
const SHAPES: readonly string[] = [
  `<script>${HIT}</script>`,
  `<img src=x onerror=${HIT}>`,
  `<svg onload=${HIT}>`,
  `<svg><script>${HIT}</script>`,
  `<body onload=${HIT}>`,
  `<iframe srcdoc="<script>parent.${HIT}</script>">`,
  `<iframe src=javascript:parent.${HIT}>`,
  `<a href=javascript:${HIT} autofocus onfocus=${HIT}>x`,
  `<input autofocus onfocus=${HIT}>`,
  `<details open ontoggle=${HIT}>x`,
  `<video><source onerror=${HIT}>`,
  `<object data=javascript:${HIT}>`,
  `<style onload=${HIT}></style>`,
  `<marquee onstart=${HIT}>x`,
  `<math><mtext><img src onerror=${HIT}>`,
  `<select autofocus onfocus=${HIT}>`,
  `<link rel=stylesheet href=x onerror=${HIT}>`,
  `<meta http-equiv=refresh content=0;url=javascript:${HIT}>`,
  `<form><button formaction=javascript:${HIT}>`,
  `<template><img src=x onerror=${HIT}>`,
];
const WRAPPINGS: readonly ((text: string) => string)[] = [
  (text) => text,
  (text) => `">${text}`,
  (text) => `'>${text}`,
  (text) => `-->${text}`,
  (text) => `</p>${text}`,
  (text) => `]]>${text}`,
  (text) => text.replaceAll('<', '<\u002f><'),
  (text) => text.toUpperCase().replaceAll('HIT()', HIT),
  (text) => `&lt;${text}`,
  (text) => text.replaceAll('<', '&#60;'),
];

/** 200 texts that must stay texts. */
export const PAYLOADS: readonly string[] = SHAPES.flatMap((shape) => WRAPPINGS.map((wrapped) => wrapped(shape)));
