/** Where a moving picture is from, in a line for its comment field. */
import { provenanceLine } from '../../sim/index.ts';
import { handedProvenanceOf } from '../engine/provenance.ts';
import type { FlightResult } from '../engine/result.ts';
import type { MovingOrder } from './moving-input.ts';

export const movingOrigin = (result: FlightResult, { call, file }: MovingOrder['origin']): string =>
  provenanceLine(handedProvenanceOf(result, call, file));
