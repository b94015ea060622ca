import { SURVEY_SCALES } from '../../core/debrief/survey';
import type { LayerKind } from '../workers/surveyMessages';
import type { LayerPicture } from './layerPicture';

export const LAYER_NAMES: Readonly<Record<LayerKind, string>> = {
  sight: 'Ground in view of the tag',
  loudness: 'Loudness at a gain',
  excess: 'Loss over free space',
  openness: 'Openness',
  'apparent-bearing-error': 'Error of the loudest side',
};

/** Levels at which a layer's bands begin, and how they are told at the scale. */
export const LAYER_LEVELS: Readonly<Record<Exclude<LayerKind, 'sight'>, readonly number[]>> = {
  loudness: [0, 10, 20, 30, 40],
  excess: [10, 20, 30, 40, 50],
  openness: [0.1, 0.2, 0.3, 0.4, 0.5],
  'apparent-bearing-error': [10, 20, 45, 90],
};

export const levelText = (what: Exclude<LayerKind, 'sight'>, level: number): string =>
  what === 'openness' ? `${Math.round(level * 100)} %` : what === 'apparent-bearing-error' ? `${level}°` : String(level);

/** What the whole map says, in a sentence: for those who can't see the picture, and for those who can. */
export function layerSentence(what: LayerKind, { values }: LayerPicture): string {
  const known = values.filter((value) => !Number.isNaN(value));
  const share = (isSo: (value: number) => boolean) => `${Math.round((100 * known.filter(isSo).length) / Math.max(1, known.length))} %`;
  const middle = [...known].sort((a, b) => a - b)[known.length >> 1] ?? 0;
  switch (what) {
    case 'sight':
      return `The tag is in line of sight from ${share((value) => value > 0.5)} of the ground.`;
    case 'loudness':
      return `At this gain the beep is heard on ${share((value) => value >= 0)} of the ground.`;
    case 'excess':
      return `Half of the ground loses more than ${Math.round(middle)} dB over free space.`;
    case 'openness':
      return `Half of the ground sees more than ${Math.round(100 * middle)} % of what lies around it.`;
    case 'apparent-bearing-error':
      return `The loudest side is off by more than 15° on ${share((value) => value > 15)} of the ground.`;
  }
}

/** The value at a place in words; empty where there is none. */
export function valueText(what: LayerKind, value: number | undefined): string {
  if (value === undefined || Number.isNaN(value)) return '';
  if (what === 'sight') return value > 0.5 ? 'in view' : 'out of view';
  if (what === 'openness') return `${Math.round(100 * value)} % open`;
  if (what === 'apparent-bearing-error') return `${Math.round(value)}° off`;
  return `${Math.round(value)} ${SURVEY_SCALES[what].unit.split(' ')[0]}`;
}
