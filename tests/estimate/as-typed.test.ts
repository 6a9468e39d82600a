// What people type, as they type it: understood, or refused with a question that has an answer.
import { describe, expect, test } from 'vitest';
import { sheetOf } from './sheet-of.ts';

/** SI value of one line alone */
const UNDERSTOOD: readonly (readonly [typed: string, si: number])[] = [
  // lengths of people
  ['x = 5 ft 3 in', 1.6002],
  ['x = 5 ft 3', 1.6002],
  ['x = 5\'3"', 1.6002],
  ["x = 5' 3", 1.6002],
  ['x = 5′3″', 1.6002],
  ['x = 5’ 3”', 1.6002],
  ['x = 5 foot 3 inches', 1.6002],
  ['x = 5 ft 3.5 in', 1.6129],
  ['x = 63"', 1.6002],
  ["x = 5'", 1.524],
  ['x = 1 m 62', 1.62],
  ['x = 1 m 62 cm', 1.62],
  ['x = 1 m 05', 1.05],
  ['x = 2 * 5 ft 3 in', 3.2004],
  ['x = -5 ft 3 in', -1.6002],
  ['x = 8 st 7 lb', 8 * 6.35029318 + 7 * 0.45359237],
  ['x = 1 min 30 s', 90],
  ['x = 1 hour 2 min 3 s', 3723],
  // a decimal comma, and commas in thousands
  ['x = 0,65 m', 0.65],
  ['x = 1,5', 1.5],
  ['x = ,5', 0.5],
  ['x = .5', 0.5],
  ['x = 0,654 s', 0.654],
  ['x = 12,5 m/s2', 12.5],
  ['x = 1,254.5 J', 1254.5],
  ['x = 1,254,000 J', 1254000],
  ['x = min(1, 2,5)', 1],
  ['x = max(3,2)', 3],
  // gravity
  ['x = 2.3 g', 2.3 * 9.80665],
  ['x = g', 9.80665],
  ['x = 500 gram', 0.5],
  ['x = 500 grams', 0.5],
  // spellings
  ['x = 1 sec', 1],
  ['x = 2 secs', 2],
  ['x = 2 seconds', 2],
  ['x = 250 ms', 0.25],
  ['x = 2 mins', 120],
  ['x = 2 metres', 2],
  ['x = 2 meters', 2],
  ['x = 1 meter', 1],
  ['x = 30 centimetres', 0.3],
  ['x = 3 inches', 0.0762],
  ['x = 3 in', 0.0762],
  ['x = 100 lbs', 45.359237],
  ['x = 100 lb', 45.359237],
  ['x = 100 pounds', 45.359237],
  ['x = 54 kgs', 54],
  ['x = 54 Kg', 54],
  ['x = 54 kilograms', 54],
  ['x = 36 kph', 10],
  ['x = 36 km/h', 10],
  ['x = 36 km / h', 10],
  ['x = 10 mph', 4.4704],
  ['x = 90 degrees', Math.PI / 2],
  ['x = 90°', Math.PI / 2],
  ['x = 90 degs', Math.PI / 2],
  ['x = 0.5 turns', Math.PI],
  ['x = 1 turn', 2 * Math.PI],
  ['x = 2 revs', 4 * Math.PI],
  ['x = 60 rpm', 2 * Math.PI],
  ['x = 3 radians', 3],
  ['x = 5 N', 5],
  ['x = 5 newtons', 5],
  ['x = 5 Nm', 5],
  ['x = 5 N.m', 5],
  ['x = 5 N·m', 5],
  ['x = 5 joules', 5],
  ['x = 5 kJ', 5000],
  ['x = 9.81 m/s2', 9.81],
  ['x = 9.81 m s⁻²', 9.81],
  ['x = 3 kg m2', 3],
  ['x = 3 kgm^2', 3],
  ['x = 12 %', 0.12],
  ['x = 2**3', 8],
  // signs
  ['x = √(4)', 2],
  ['x = 2 × 3 ÷ 4', 1.5],
  ['x = sin(30 deg)', 0.5],
  ['x = sin(30°)', 0.5],
  ['x = sin(pi / 6)', 0.5],
  ['x = sin(0)', 0],
  ['x = cos(90 deg)', 0],
  ['x = 0.1 + 0.2 - 0.3', 0],
  // spreads
  ['x = 5 ft 3 in ± 1 in', 1.6002],
  ['x = 5 ft 3 in +/- 1 in', 1.6002],
];

describe('understood', () => {
  test.each(UNDERSTOOD)('%s', (typed, si) => {
    const { faults, of } = sheetOf([typed]);
    expect(faults).toEqual([]);
    expect(of('x').value).toBeCloseTo(si, 9);
  });
  test('5 ft 3 in with its ± of an inch', () => {
    const { of } = sheetOf(['height = 5 ft 3 in +- 1 in']);
    expect(of('height').ownSpread).toBeCloseTo(0.0254, 12);
    expect(of('height').unit.name).toBe('ft');
  });
  test('body weights are of the mass of the sheet', () => {
    const sheet = sheetOf(['mass = 50 kg', 'F = 3 bodyweights', 'r = 1000 N to bw']);
    expect(sheet.of('F').value).toBeCloseTo(3 * 50 * 9.80665, 9);
    expect(sheet.value('r')).toBeCloseTo(1000 / (50 * 9.80665), 9);
    expect(sheetOf(['F = 3 bw']).fault(0)).toContain('mass');
  });
  test('a line named g is what 2.3 g is in', () =>
    expect(sheetOf(['g = 10 m/s^2', 'a = 2.3 g']).of('a').value).toBeCloseTo(23, 12));
  test.each(['h_é', 'ømass', 'масса', '質量', 'Größe', 'θ_arm', 'v₀', 'naïve', 'm_كتلة'])('%s is a name', (name) => {
    const { faults, of } = sheetOf([`${name} = 3 kg`, `b = 2 * ${name}`]);
    expect(faults).toEqual([]);
    expect(of('b').value).toBe(6);
  });
  test('a name composed of letter and accent is the same name', () =>
    expect(sheetOf(['h_e\u0301 = 3', 'b = h_\u00e9']).of('b').value).toBe(3));
  test('free text after if', () => {
    const { faults, of } = sheetOf(['x = 2 kg if the arms stay close to the body, rigid shape']);
    expect(faults).toEqual([]);
    expect(of('x').assumptions).toEqual(['the arms stay close to the body', 'rigid shape']);
  });
});

const REFUSED: readonly (readonly [typed: string, words: string])[] = [
  ['x = sin(30)', '30 rad or 30 deg?'],
  ['x = cos(2 * 15)', 'rad or'],
  ['x = 30 to deg', '30 rad or 30 deg?'],
  ['x = 1,254 J', '1.254 or 1254?'],
  ['x = 1.254,5 J', 'both a point and a comma'],
  ['x = 1.2.3', 'is no number'],
  ['x = 5 ft 30 in', 'under 12'],
  ['x = 1 m 6', '1.06 m or 1.6 m?'],
  ['x = 3 kg 2 m', 'side by side'],
  ['x = 3 m 2 m', 'side by side'],
  ['x = 5 3', 'side by side'],
  ['x = 5 ms^-1', 'm/s'],
  ['mass = 500 g', 'gram'],
  ['x = sqrt(-1)', 'root of a negative number'],
  ['x = (-8)^(1/3)', 'negative'],
  ['x = (1 m - 2 m)^0.5', 'negative'],
  ['x = ln(0)', 'logarithm'],
  ['x = asin(2)', 'between -1 and 1'],
  ['x = tan(90 deg)', 'no value'],
  ['x = 1 / 0', 'divided by 0'],
  ['x = 1 / (0.1 + 0.2 - 0.3)', 'is zero but for rounding'],
  ['x = 2 / sin(180 deg)', 'is zero'],
  ['x = 1e308 * 1e10', 'too large'],
  ['x = (2', 'not closed'],
  ['x = 2)', 'not opened'],
  ['x = 2 *', 'missing after'],
  ['x = 2 * / 3', 'between'],
  ['x = ()', 'empty'],
  ['x = 2 (3 m', 'not closed'],
  ['x = {air time', 'not closed'],
  ['x = [2]', '"["'],
  ['x = "text"', 'no place'],
  ['x = foo(3)', 'no function'],
  ['x = mas', 'neither'],
];

describe('refused, with what and where', () => {
  test.each(REFUSED)('%s: %s', (typed, words) => {
    const { result } = sheetOf([typed]);
    const [line] = result.lines;
    if (line.kind !== 'fault') throw new Error(`computed: ${JSON.stringify(line)}`);
    expect(line.message).toContain(words);
    expect(line.message).not.toMatch(/ℓ|ℕ|\bNaN\b|Infinity/);
    if (line.part !== undefined) expect(typed).toContain(line.part);
    // whatever is offered can be read
    for (const fix of line.fixes ?? []) expect(sheetOf([fix.text]).faults).toEqual([]);
  });
  test('an angle kept in a line of its own is asked for too', () =>
    expect(sheetOf(['a = 30', 'x = sin(a)']).fault(1)).toContain('rad or deg?'));
  test('a word that is a line and a unit', () =>
    expect(sheetOf(['turns = 2', 'x = 0.5 turns']).fault(1)).toContain('both a line and a unit'));
  test('a unit asked for that does not fit says what the line is', () => {
    const { result } = sheetOf(['v = 5 m/s', 'g = 9.81 m/s^2', 'rise = v^2 / (2 * g) to s']);
    expect(result.lines[2]).toMatchObject({
      kind: 'fault',
      message: 'rise is a length, in m; it was asked for in s, a time.',
      part: 'to s',
      fixes: [
        { title: 'Write to m', text: 'rise = v^2 / (2 * g) to m' },
        { title: 'Set against rise', text: 'rise = v^2 / (2 * g) to m vs {rise}' },
      ],
    });
  });
  test('names nearly typed are offered', () => {
    const { result } = sheetOf(['mass = 5 kg', 'x = 2 * mas']);
    expect(result.lines[1]).toMatchObject({ fixes: [{ title: 'Write mass', text: 'x = 2 * mass' }] });
  });
});
