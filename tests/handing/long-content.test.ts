// A link is not made that its own reader would refuse.
import { expect, test } from 'vitest';
import { packText, unpackText } from '../../sim/handing/pack.ts';

test('what packs well and unpacks to too much is refused where it is made', () => {
  const most = 200_000;
  expect(unpackText(packText('1.', 'a'.repeat(most)), 2)).toHaveLength(most);
  expect(() => packText('1.', 'a'.repeat(most + 1))).toThrow(/too long: 200001/);
});
