import { placeShown } from './beliefNow';
import { laterPart } from './laterPart';

const RareControls = laterPart(async () => (await import('./kinds/RareControls')).RareControls);

/** What rare kinds of exercise need beside the map. */
export const KindControls = () => (placeShown.value ? null : <RareControls />);
