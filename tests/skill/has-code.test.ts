/** Which skills have a code of the trampoline or the water. */
import { expect, test } from 'vitest';
import { athletes, chains, shapes, skills } from '../../presets/index.ts';
import { buildSkill, hasCode, launch, loadContact, parseSkill } from '../../sim/index.ts';

const contact = await loadContact();
const of = (id: string): boolean =>
  hasCode(launch(buildSkill(parseSkill(skills[id] ?? chains[id], { athletes, shapes })), contact));

test('floor, bed and water have one; rails, catches and vaults have none', () => {
  expect(['back-tuck', 'trampoline-barani', 'dive-two-and-a-half-pike'].map(of)).toEqual([true, true, true]);
  expect(['giant-double-straight', 'low-rail-half-turn-high-rail', 'vault-handspring-half'].map(of)).toEqual([
    false,
    false,
    false,
  ]);
});
