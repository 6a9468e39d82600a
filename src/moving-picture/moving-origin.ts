/** Where a moving picture is from, in a line for its comment field. */
import { provenanceLine } from '../../sim/index.ts';
import { provenanceOf } from '../engine/provenance.ts';
import type { FlightResult } from '../engine/result.ts';
import type { MovingOrder } from './moving-input.ts';

/** A ready skill is named as it is; of any other only what is handed on goes into the digest: a guessed name could be tried on it. */
export function movingOrigin(result: FlightResult, { call, file }: MovingOrder['origin']): string {
  const own = provenanceOf(result, call);
  if (own.inputs[0].ready?.changed === false) return provenanceLine(own);
  const athlete = 'ref' in file.athlete ? result.athlete : file.athlete;
  return provenanceLine(provenanceOf({ ...result, file, athlete }, call));
}
