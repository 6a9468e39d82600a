/** A recording of a ready skill. */
import { flySkill } from '../../sim/index.ts';
import { preset } from '../skill/load.ts';
import { bvhOfFlight } from './flight-bvh.ts';

export const writeOwnBvh = (id: string, rateHz: number): string => bvhOfFlight(flySkill(preset(id)), rateHz);
