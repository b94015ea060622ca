/** The few drawings that stand where a word would not fit. All carry their name outside. */
const mark = (path: string) => (
  <svg
    viewBox="0 0 20 20"
    width="20"
    height="20"
    fill="none"
    stroke="currentColor"
    stroke-width="1.8"
    stroke-linecap="round"
    stroke-linejoin="round"
    aria-hidden="true"
  >
    <path d={path} />
  </svg>
);

export const PlusMark = () => mark('M10 4v12M4 10h12');
export const MinusMark = () => mark('M4 10h12');
export const HereMark = () => mark('M10 2v3M10 15v3M2 10h3M15 10h3M10 6a4 4 0 1 0 0 8a4 4 0 0 0 0-8');
export const CloseMark = () => mark('M5 5l10 10M15 5L5 15');
export const StrikeMark = () => mark('M3 10h14M6 5h8M6 15h8');
export const RestoreMark = () => mark('M4 9a6 6 0 1 1 1.500 5M4 9V4.500M4 9h4.500');
export const SpeakerMark = () => mark('M3 8v4h3l4 3.500v-11L6 8zM13.500 7.500a4 4 0 0 1 0 5');
export const MutedMark = () => mark('M3 8v4h3l4 3.500v-11L6 8zM13.500 8l4 4M17.500 8l-4 4');
