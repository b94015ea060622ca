/** One axis of a chart: from, to, and where the numbers stand; `octaves` gives every doubling the same room. */
export type Axis = {
  readonly from: number;
  readonly to: number;
  readonly name: string;
  readonly unit: string;
  readonly at: readonly number[];
  readonly octaves?: boolean;
};

/** A line of points; `heard` is sound, `law` how the receiver or the ear works, `truth` what the waves do. */
export type ChartLine = {
  readonly kind: 'heard' | 'law' | 'truth';
  readonly name: string;
  readonly points: readonly (readonly [number, number])[];
};

/** `now` is at the present settings, `other` by the other way of hearing it. */
export type ChartDot = { readonly kind: 'now' | 'other'; readonly name: string; readonly x: number; readonly y: number };

/** A chart as numbers; every line and dot carries its own name, so there is no legend. */
export type Chart = {
  readonly name: string;
  readonly x: Axis;
  readonly y: Axis;
  readonly lines: readonly ChartLine[];
  readonly dots: readonly ChartDot[];
};
