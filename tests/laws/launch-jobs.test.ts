// One launch on the page too: its flight, and the jobs that its panels ask, fly from the state and to the end that a flight has.
import { afterAll, describe, expect, it } from 'vitest';
import { calcFlightEnd, calcTiltAccount, type Flight, flySkill } from '../../sim/index.ts';
import { makeEngine } from '../../src/engine/engine.ts';
import type { AccountProgress } from '../../src/jobs/kinds/account-data.ts';
import type { WholeProgress } from '../../src/jobs/kinds/whole-data.ts';
import { makePool } from '../../src/jobs/pool.ts';
import { startClonedPort } from '../jobs/cloned-port.ts';
import { fileOf, shelf, skillOf } from '../skill/load.ts';

/** s; measured 0 */
const SAME_S = 1e-9;

const pool = makePool(startClonedPort, { workers: 1 });
const { shapes } = shelf;
const engine = makeEngine(shelf, (file, athlete) => pool.run('release', { file, athlete, shapes }).done);
afterAll(() => pool.close());

/** How a flight begins and ends. */
function readFlight(flight: Flight) {
  const n = flight.body.angles.length;
  const start = { angles: new Float64Array(n), rates: new Float64Array(n) };
  flight.schedule.anglesInto(0, start.angles, start.rates);
  const attitude = new Float64Array(4);
  flight.quatInto(0, attitude);
  const { p_WScm_W0: place, v_WScm_W0: velocity, h_Scm_W: momentum, duration } = flight;
  return { place, velocity, momentum, attitude, ...start, duration, end: calcFlightEnd(flight) };
}

/** A late hand, a plain release, a known contact, a stated take-off. */
describe.each(['giant-late-hand-full', 'giant-double-straight', 'vault-handspring-half', 'back-straight-full'])(
  '%s on the page',
  (id) => {
    const file = fileOf(id);
    const athlete = engine.findAthlete(file);
    const skill = skillOf(file);
    const flight = flySkill(skill);
    const asked = { file, athlete, shapes };

    it('is flown as "fly" flies it, once its release has come from a worker', async () => {
      await engine.ready(file);
      const onPage = engine.fly(file);
      expect(onPage.skill.carried).toEqual(skill.carried);
      expect(onPage.skill.takeoff).toEqual(skill.takeoff);
      expect(readFlight(onPage.flight)).toEqual(readFlight(flight));
    });

    it('has the tilt account of that flight', async () => {
      const said: AccountProgress[] = [];
      const onProgress = (p: AccountProgress): void => void said.push(p);
      await pool.run('account', { ...asked, at: 0.3, tiltOnly: true }, { onProgress }).done;
      expect(said.at(-1)).toEqual({ kind: 'tilt', account: calcTiltAccount(skill, { flight, at: 0.3 }) });
    });

    it('has the air time of that flight in a sheet', async () => {
      const lines = ['T = 1 s vs {air time}'];
      const { rows } = await pool.run('sheet', { ...asked, lines, key: id }).done;
      const [{ result }] = rows;
      if (result.kind !== 'quantity') throw new Error('not computed');
      expect(Math.abs((result.compared?.simulated ?? Number.NaN) - flight.duration)).toBeLessThanOrEqual(SAME_S);
    });

    it('touches down as that flight does, with all its phases', async () => {
      const said: WholeProgress[] = [];
      const onProgress = (p: WholeProgress): void => void said.push(p);
      await pool.run('whole', asked, { onProgress }).done;
      const [whole] = said;
      if (whole.kind !== 'whole') throw new Error('no whole');
      const [leg] = whole.result.legs;
      expect(leg.barX).toBe(skill.launch.barX);
      expect(Math.abs(leg.touchdown - flight.duration)).toBeLessThanOrEqual(SAME_S);
    });
  },
);
