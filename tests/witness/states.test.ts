/**
 * State by state: MuJoCo computes mass, mass centre, angular momentum and, from accelerations got by differences of the
 * columns, the forces, from the q and qd columns of the frames CSV alone (mujoco.ts, csv.ts).
 */
import { beforeAll, describe, expect, test } from 'vitest';
import { type Flight, flySkill } from '../../sim/index.ts';
import { recordChecks } from '../validation/record.ts';
import { type Table, tableOf } from './csv.ts';
import { loadWitness, type Mujoco, Witness } from './mujoco.ts';
import { witnessed } from './skills.ts';
import { around, clearOf, slope } from './stencil.ts';

const near = recordChecks('states');
const INSTANTS = 50;
/** share of the body's mass; of 1 m; of the largest |h| of one segment group; measured at worst 2.2e-16, 1.8e-15, 6.3e-15 */
const STATE = 1e-9;
/** the same, against the first instant; measured at worst 5.2e-15 */
const CONSTANT = 1e-9;
/** share of the largest torque; measured at worst 2.5e-10 */
const TORQUE = 1e-8;
/** root force and moment: share of weight, and of the largest torque; measured at worst 5.0e-10 */
const ROOT = 1e-8;
/** step of the difference stencils, s */
const H = 5e-4;
/** the columns' own noise is divided by H, so these flights are integrated finely */
const FINE = { tolerance: 1e-13 };

const POSITION = ['px', 'py', 'pz', 'qw', 'qx', 'qy', 'qz'];
const VELOCITY = ['vx', 'vy', 'vz', 'wx', 'wy', 'wz'];

let mj: Mujoco;
beforeAll(async () => {
  mj = await loadWitness();
});

const even = (duration: number): number[] =>
  Array.from({ length: INSTANTS }, (_, i) => (duration * i) / (INSTANTS - 1));

function put(witness: Witness, table: Table, row: number): void {
  witness.put(
    [...table.several(row, POSITION), ...witness.hinges.map((n) => table.at(row, `q_${n}`))],
    [...table.several(row, VELOCITY), ...witness.hinges.map((n) => table.at(row, `qd_${n}`))],
  );
}

/** Largest |h| of any segment group: whole-body h may be zero where the parts are not. */
function momentumScale(table: Table): number {
  const names = table
    .endings('h_')
    .filter((n) => n.endsWith('_x_kg_m2_s'))
    .map((n) => n.slice(0, -'_x_kg_m2_s'.length));
  let most = 0;
  for (let i = 0; i < table.length; i++)
    for (const g of names)
      most = Math.max(most, Math.hypot(...['x', 'y', 'z'].map((a) => table.at(i, `h_${g}_${a}_kg_m2_s`))));
  return most;
}

interface Worst {
  mass: number;
  centre: number;
  momentum: number;
  drift: number;
}

function compareStates(flight: Flight): Worst {
  const table = tableOf(flight, even(flight.duration));
  const witness = new Witness(mj, flight.body, flight.gravity);
  const scale = momentumScale(table);
  const worst = { mass: Math.abs(witness.mass / flight.body.mass - 1), centre: 0, momentum: 0, drift: 0 };
  let first: number[] | undefined;
  for (let row = 0; row < table.length; row++) {
    put(witness, table, row);
    const { centre, angularMomentum: h } = witness.measure();
    first ??= h;
    ['x', 'y', 'z'].forEach((a, k) => {
      worst.centre = Math.max(worst.centre, Math.abs(centre[k] - table.at(row, `com${a}`)));
      worst.momentum = Math.max(worst.momentum, Math.abs(h[k] - table.at(row, `h${a}`)) / scale);
      worst.drift = Math.max(worst.drift, Math.abs(h[k] - (first as number[])[k]) / scale);
    });
  }
  witness.delete();
  return worst;
}

/** MuJoCo's inverse dynamics with the accelerations of root and hinges by differences of the velocity columns. */
function compareForces(flight: Flight): { torque: number; root: number } {
  const { body, gravity, duration, schedule } = flight;
  const witness = new Witness(mj, body, gravity);
  const times = even(duration).map((t) => clearOf(t, 4 * H, 0, duration, schedule.breaks));
  const columns = [...VELOCITY, ...witness.hinges.map((n) => `qd_${n}`)];
  const stencils = times.map((t) => around(t, H));
  const all = [...new Set(stencils.flat())].sort((a, b) => a - b);
  const table = tableOf(flight, all);
  let strongest = 0;
  const off = { torque: 0, force: 0, moment: 0 };
  for (const stencil of stencils) {
    const rows = stencil.map((t) => all.indexOf(t));
    const row = rows[4];
    put(witness, table, row);
    const qacc = columns.map((name) =>
      slope(
        rows.map((i) => table.at(i, name)),
        H,
      ),
    );
    const found = witness.inverse(qacc);
    for (let k = 0; k < 3; k++) {
      off.force = Math.max(off.force, Math.abs(found[k]));
      off.moment = Math.max(off.moment, Math.abs(found[3 + k]));
    }
    witness.hinges.forEach((n, k) => {
      const tau = table.at(row, `tau_${n}`);
      strongest = Math.max(strongest, Math.abs(tau));
      off.torque = Math.max(off.torque, Math.abs(found[6 + k] - tau));
    });
  }
  witness.delete();
  const weight = body.mass * 9.81;
  return { torque: off.torque / strongest, root: Math.max(off.force / weight, off.moment / strongest) };
}

/** of all skills */
const most = { mass: 0, centre: 0, momentum: 0, torque: 0, root: 0 };
const seen = new Set<string>();
const note = (worst: Partial<typeof most>): void => {
  for (const key of Object.keys(most) as (keyof typeof most)[]) most[key] = Math.max(most[key], worst[key] ?? 0);
};

describe.each(witnessed)('%s', (id, skill) => {
  test('MuJoCo finds our mass, mass centre and angular momentum, and that it is constant', () => {
    const worst = compareStates(flySkill(skill));
    if (process.env.SHOW) console.log(worst);
    note(worst);
    seen.add(id);
    expect(worst.mass).toBeLessThan(STATE);
    expect(worst.centre).toBeLessThan(STATE);
    expect(worst.momentum).toBeLessThan(STATE);
    expect(worst.drift).toBeLessThan(CONSTANT);
  });

  test('its inverse dynamics finds our joint torques and nothing that holds the root', () => {
    const worst = compareForces(flySkill(skill, FINE));
    if (process.env.SHOW) console.log(worst);
    note(worst);
    expect(worst.torque).toBeLessThan(TORQUE);
    expect(worst.root).toBeLessThan(ROOT);
  });
});

describe('over all ready skills', () => {
  test('W1: MuJoCo finds mass, mass centre, angular momentum and joint torques from positions and rates alone', () => {
    expect(seen.size).toBe(witnessed.length);
    near('mass centre, largest difference, m', most.centre, 0, STATE);
    near('angular momentum, largest difference as a share', most.momentum, 0, STATE);
    near('joint torques, largest difference as a share', most.torque, 0, TORQUE);
    near('what would have to hold the root, share of weight or torque', most.root, 0, ROOT);
  });
});
