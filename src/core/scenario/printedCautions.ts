/** The usual cautions of every printed sheet. */
export const PRINTED_CAUTIONS =
  'Outdoors: stay 20 m from overhead lines with the antenna lowered and never go near a fallen one; mind steep ground, water, roads and ' +
  'headphones, weather and dark; tell somebody where you go; ask the land’s owner first. Transmitters need a licence or type approval under ' +
  'local rules. Local rules come before anything printed here.';
