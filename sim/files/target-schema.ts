/** What a skill, or one flight of it, is meant to be. */
import * as v from 'valibot';
import { may, one, say, within } from './schema-parts.ts';

export const targetSchema = v.strictObject({
  somersaults: say(within(0, 20, 'somersaults'), 'Somersaults.'),
  direction: may(one('backward', 'forward'), 'Their way.'),
  twists: say(within(0, 20, 'twists'), 'Twists.'),
  twistTo: may(one('left', 'right'), 'Their side.'),
  landingAngleDeg: may(
    within(-180, 180, 'deg'),
    'Angle of the body at the end; 0 upright (if left out), 180 head first.',
  ),
});
