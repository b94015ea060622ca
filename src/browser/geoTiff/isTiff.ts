/** What a TIFF begins with, lowest or highest byte first; the second of each is for files over 4 GB. */
const BEGINNINGS = ['II*\0', 'II+\0', 'MM\0*', 'MM\0+'];

export const isTiff = (bytes: ArrayBuffer): boolean => BEGINNINGS.includes(String.fromCharCode(...new Uint8Array(bytes.slice(0, 4))));
