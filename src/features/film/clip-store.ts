/** What was measured in clips, kept in this browser by name, size and stretch of the file: opened again after a reload it is there again. */
import type { ClipMeasured } from '../../../sim/index.ts';
import type { Clipping } from '../../engine/clip.ts';
import type { FlightResult } from '../../engine/result.ts';
import { dropOldest, readStored, writeStored } from '../../ui/stored.ts';

const PREFIX = 'shapeflight.measured.';
/** Clips that are remembered. */
const MOST = 24;

const isSome = ({ marks, posed, scale, stand }: ClipMeasured): boolean =>
  marks.length + posed.length > 0 || scale !== undefined || stand !== undefined;

/** False: the browser refused. Where nothing was measured, and nothing is there, nothing is stored. */
export function storeMeasured(
  stretch: string,
  measured: ClipMeasured,
  entry: Parameters<Clipping['read']>[0],
): boolean {
  if (!isSome(measured) && readStored(PREFIX + stretch) === null) return true;
  const isStored = writeStored(PREFIX + stretch, JSON.stringify({ savedAt: Date.now(), entry }));
  dropOldest(PREFIX, MOST);
  return isStored;
}

/** Checked as the entry of a file is; of another build or body, or damaged: left alone. */
export function readMeasured(stretch: string, engine: Clipping, result: FlightResult): ClipMeasured | undefined {
  try {
    const { entry } = JSON.parse(readStored(PREFIX + stretch) ?? '{}') as { entry?: Parameters<Clipping['read']>[0] };
    const measured = entry && engine.read(entry, result).measured;
    return measured && isSome(measured) ? measured : undefined;
  } catch {
    return undefined;
  }
}
