import type { FixMethod } from '../../core/fix/fix';

/** Position, kappa and chi-square axes of one method, computed independently for this project. */
export type ReferenceFix = {
  readonly x: number;
  readonly y: number;
  readonly kappa: number;
  readonly semiMajorM: number;
  readonly semiMinorM: number;
  readonly majorAxisBearingDeg: number;
};

export type ReferenceCase = {
  readonly id: string;
  readonly stations: readonly (readonly [number, number])[];
  readonly bearingsDeg: readonly number[];
  readonly fixes: Readonly<Record<FixMethod, ReferenceFix>>;
};

/** Six drawn exercises, two of them with a stray bearing. A test holds this table to `tests/outside/data/fix-cases.json`. */
export const REFERENCE_CASES: readonly ReferenceCase[] = [
  {
    id: 'case01',
    stations: [
      [246.6, 257.1],
      [-830.2, -763.5],
      [-981.2, 770.7],
    ],
    bearingsDeg: [276.6, 36.0, 114.9],
    fixes: {
      ml: { x: -36.22501, y: 292.77142, kappa: 1997.1094953111258, semiMajorM: 75.4662, semiMinorM: 15.0517, majorAxisBearingDeg: 97.0219 },
      huber: {
        x: -36.31605,
        y: 292.77327,
        kappa: 2001.131577995263,
        semiMajorM: 75.4166,
        semiMinorM: 15.0431,
        majorAxisBearingDeg: 97.0154,
      },
      andrews: {
        x: -39.36663,
        y: 292.77838,
        kappa: 2171.9452202218545,
        semiMajorM: 74.4574,
        semiMinorM: 14.7532,
        majorAxisBearingDeg: 96.794,
      },
    },
  },
  {
    id: 'case06',
    stations: [
      [416.4, 1155.5],
      [1253.2, 441.0],
      [859.4, -197.1],
      [1209.5, -432.5],
      [-150.4, -659.6],
      [-249.3, -1408.5],
      [-651.5, -720.3],
      [-949.1, 275.4],
    ],
    bearingsDeg: [203.7, 259.2, 279.3, 286.0, 1.6, 7.0, 41.4, 110.8],
    fixes: {
      ml: { x: -115.88889, y: -25.3056, kappa: 306.6946359036649, semiMajorM: 74.7072, semiMinorM: 64.649, majorAxisBearingDeg: 22.1208 },
      huber: {
        x: -113.65429,
        y: -40.51952,
        kappa: 519.0445529342198,
        semiMajorM: 58.9574,
        semiMinorM: 49.3756,
        majorAxisBearingDeg: 16.0193,
      },
      andrews: {
        x: -111.65119,
        y: -51.44302,
        kappa: 2076.768107174365,
        semiMajorM: 30.8708,
        semiMinorM: 26.8747,
        majorAxisBearingDeg: 9.1769,
      },
    },
  },
  {
    id: 'case12',
    stations: [
      [-1062.6, -1292.7],
      [-836.0, -1292.6],
      [-555.5, -1284.2],
      [-249.3, -1288.7],
      [48.8, -1288.8],
      [277.0, -1298.1],
      [542.0, -1285.0],
      [819.3, -1310.6],
    ],
    bearingsDeg: [39.5, 34.9, 16.3, 5.9, 349.6, 339.7, 331.7, 319.4],
    fixes: {
      ml: { x: -139.58964, y: -153.98327, kappa: 708.112452320231, semiMajorM: 99.5055, semiMinorM: 45.5708, majorAxisBearingDeg: 179.2 },
      huber: {
        x: -136.47691,
        y: -158.97418,
        kappa: 777.0424803788517,
        semiMajorM: 96.1104,
        semiMinorM: 44.287,
        majorAxisBearingDeg: 177.9937,
      },
      andrews: {
        x: -138.69262,
        y: -158.34872,
        kappa: 819.134077880444,
        semiMajorM: 96.6105,
        semiMinorM: 44.0154,
        majorAxisBearingDeg: 177.8777,
      },
    },
  },
  {
    id: 'case18',
    stations: [
      [-36.5, 59.2],
      [-148.1, 13.2],
      [-236.1, 34.1],
      [-222.3, 57.8],
    ],
    bearingsDeg: [270.0, 350.9, 42.4, 48.1],
    fixes: {
      ml: { x: -173.65147, y: 95.83853, kappa: 42.44498145290089, semiMajorM: 33.3325, semiMinorM: 17.8235, majorAxisBearingDeg: 42.1825 },
      huber: {
        x: -172.53859,
        y: 97.50447,
        kappa: 47.56380402525039,
        semiMajorM: 32.8749,
        semiMinorM: 17.301,
        majorAxisBearingDeg: 40.8658,
      },
      andrews: {
        x: -172.63452,
        y: 97.65336,
        kappa: 48.67628081678723,
        semiMajorM: 33.4522,
        semiMinorM: 17.245,
        majorAxisBearingDeg: 41.1709,
      },
    },
  },
  {
    id: 'case24',
    stations: [
      [-1001.1, -618.0],
      [-685.3, -577.1],
      [-289.9, -603.9],
      [-2.0, -607.4],
      [416.5, -598.8],
      [717.5, -590.9],
    ],
    bearingsDeg: [64.5, 49.1, 20.6, 340.8, 302.7, 327.8],
    fixes: {
      ml: {
        x: -121.12017,
        y: -70.36091,
        kappa: 22.195372837674473,
        semiMajorM: 267.0158,
        semiMinorM: 183.7637,
        majorAxisBearingDeg: 0.0204,
      },
      huber: {
        x: -138.80245,
        y: -132.50357,
        kappa: 35.422865568222136,
        semiMajorM: 199.6035,
        semiMinorM: 134.9199,
        majorAxisBearingDeg: 3.7103,
      },
      andrews: {
        x: -150.61239,
        y: -194.37992,
        kappa: 470.52061181470583,
        semiMajorM: 54.0757,
        semiMinorM: 34.6011,
        majorAxisBearingDeg: 3.4745,
      },
    },
  },
  {
    id: 'case30',
    stations: [
      [267.7, 1340.2],
      [229.8, 900.9],
      [-322.2, -648.3],
      [-418.5, -630.8],
      [-881.4, -27.8],
      [-1568.2, 15.0],
      [-535.4, 202.4],
      [-951.3, 707.8],
    ],
    bearingsDeg: [203.4, 260.4, 5.4, 19.2, 86.2, 81.2, 108.9, 121.6],
    fixes: {
      ml: {
        x: -321.67321,
        y: 141.19269,
        kappa: 11.439025020365934,
        semiMajorM: 325.8442,
        semiMinorM: 145.5817,
        majorAxisBearingDeg: 104.1695,
      },
      huber: {
        x: -250.23774,
        y: 113.23677,
        kappa: 22.832251525106678,
        semiMajorM: 235.9848,
        semiMinorM: 132.8815,
        majorAxisBearingDeg: 104.4244,
      },
      andrews: {
        x: -197.23025,
        y: 91.1453,
        kappa: 154.00470726431018,
        semiMajorM: 94.7446,
        semiMinorM: 60.5724,
        majorAxisBearingDeg: 105.339,
      },
    },
  },
];
