/**
 * The keys that do what a held shape does: for opening a shape into joint lanes. Stop keys at both its edges for every angle
 * that it moves; the plane of an arm, which may jump where the arm hangs or points up, is read off the schedule itself.
 */

import { compileSkillSchedule, type FileKey, type FileTime, flightOf } from '../../sim/index.ts';
import { resolveTime } from '../../sim/math/anchor.ts';
import { DEG } from '../../sim/math/angles.ts';
import { withoutSide } from '../../sim/math/side.ts';
import type { FlightResult } from './result.ts';

export interface BlockKeys {
  readonly keys: readonly FileKey[];
  /** the shape that fills the rest where no other block is left */
  readonly base?: string;
}

/** On either side of an instant, s: what an angle is as it arrives there, and as it leaves. */
const ASIDE = 1e-7;
const JUMP = 1e-4; // deg
const POLE = 1e-3; // rad
const LED = 0.01; // deg
const STAGES = 8;

export function calcBlockKeys(result: FlightResult, index: number): BlockKeys {
  const { file, skill, flight, outline } = result;
  const { body } = skill;
  const { blocks, keys: own, base } = skill.schedule;
  const all = flightOf(file).schedule.blocks ?? [];
  const [block, pose] = [all[index], blocks[index].pose];
  const around = [blocks[index - 1]?.pose, blocks[index + 1]?.pose].filter((p) => p !== undefined);
  if (around.length === 0) around.push(base);
  const at = (time: FileTime): number => resolveTime(time, { apex: outline.apex, touchdown: flight.duration });
  const planes = body.shoulders.map((s) => s.plane);
  const isKeyed = (a: number, t: number): boolean => own.some((k) => k.angle === a && Math.abs(at(k.at) - t) < 1e-6);
  const moves = (a: number): boolean => around.some((p) => p[a] !== pose[a]) || own.some((k) => k.angle === a);
  const keys: FileKey[] = [];
  const edges = at(block.to) > at(block.from) ? [block.from, block.to] : [block.from];
  for (const time of edges)
    body.angles.forEach(({ name }, a) => {
      if (planes.includes(a) || !moves(a) || isKeyed(a, at(time))) return;
      keys.push({ angle: name, at: time, deg: tidy(pose[a] * DEG), kind: 'stop' });
    });
  // as written: what a swing carries over is led into whatever is keyed, so keys that held it would have it twice
  const { carried: _, ...written } = skill;
  const schedule = compileSkillSchedule(written, { apex: outline.apex, touchdown: flight.duration });
  const row = new Float64Array(body.angles.length);
  const read = (t: number, a: number): number => {
    schedule.anglesInto(t, row, new Float64Array(row.length));
    return row[a];
  };
  for (const { plane, elevation } of body.shoulders) {
    // arms that stand alike in both shapes may be led there and back on the way
    const isLed = [block, all[index + 1]].some((b) => b?.arms === 'front' || b?.arms === 'side');
    if (!isLed && ![plane, elevation].some(moves)) continue;
    const { name } = body.angles[plane];
    const put = (time: FileTime): void => {
      const t = at(time);
      if (isKeyed(plane, t)) return;
      const [arrive, depart] = [read(t - ASIDE, plane), read(t + ASIDE, plane)].map((v) => tidy(v * DEG));
      const jump = Math.abs(depart - arrive) > JUMP ? { nextDeg: depart } : {};
      keys.push({ angle: name, at: time, deg: arrive, kind: 'stop', ...jump });
    };
    const isPole = (t: number): boolean => Math.abs(Math.sin(read(t, elevation))) < POLE;
    const [former, next] = [all[index - 1], all[index + 1]];
    if (former && isPole(at(former.to))) put(former.to);
    // a path in front or by the side leads the plane there and back: stages on the way stand for it
    const lead = (from: FileTime, to: FileTime): void => {
      const [a, b] = [at(from), at(to)];
      if (own.some((k) => k.angle === plane && at(k.at) > a && at(k.at) < b)) return;
      const ends = (read(a + ASIDE, plane) + read(b - ASIDE, plane)) / 2;
      if (Math.abs(read((a + b) / 2, plane) - ends) * DEG < LED) return;
      for (let i = 1; i < STAGES; i++) {
        const t = a + (i / STAGES) * (b - a);
        const time: FileTime = { anchor: from.anchor, s: from.s + t - a };
        keys.push({ angle: name, at: time, deg: tidy(read(t, plane) * DEG), kind: 'pass' });
      }
    };
    if (former) lead(former.to, block.from);
    for (const time of edges) put(time);
    if (next) lead(block.to, next.from);
    if (next && isPole(at(next.from))) put(next.from);
  }
  return { keys: joinSides(keys), ...(blocks.length === 1 ? { base: block.shape } : {}) };
}

const tidy = (deg: number): number => Math.round(deg * 1e4) / 1e4;

/** Two sides with equal keys are one key for both. */
function joinSides(keys: readonly FileKey[]): FileKey[] {
  const out: FileKey[] = [];
  for (const key of keys) {
    const stem = withoutSide(key.angle);
    const twin = out.findIndex(
      (k) =>
        stem !== key.angle &&
        k.angle !== key.angle &&
        withoutSide(k.angle) === stem &&
        k.at.anchor === key.at.anchor &&
        k.at.s === key.at.s &&
        k.deg === key.deg &&
        k.nextDeg === key.nextDeg,
    );
    if (twin >= 0) out[twin] = { ...out[twin], angle: stem };
    else out.push(key);
  }
  return out;
}
