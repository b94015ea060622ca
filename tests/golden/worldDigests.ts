import { worldDigest } from '../../src/core/world/digest';
import { RELIEF_STYLES, worldOf } from '../core/world/sixGrounds';

/** The digest of one of the six grounds, for any engine of JavaScript. */
export const digestOfStyle = (style: string): string => worldDigest(worldOf(RELIEF_STYLES.find((known) => known === style)!));
