/**
 * Whether a body is like those that the proportions were measured on, as plain notes. Ranges of stature and of mass over
 * stature squared: the 3rd and 97th of a hundred US youths by age and sex, data files of the CDC growth charts 2000 (public
 * domain; read in a copy of the files, rounded). From 20 years on, and without an age, those of 20 years. Nothing here is a
 * judgement of a person: outside the range the model's proportions are less known, that is all.
 */
import { FieldError } from '../math/field-error.ts';
import type { Sex } from './deleva.ts';
import { ADULT_AGE, JENSEN_AGES } from './mass-shares.ts';

interface Build {
  readonly sex: Sex;
  readonly mass: number; // kg
  readonly stature: number; // m
  readonly age?: number; // years
}

/** years: stature from, to (m); mass / stature^2 from, to (kg/m2) */
type Row = readonly [years: number, low: number, high: number, lean: number, heavy: number];
const RANGES: Readonly<Record<Sex, readonly Row[]>> = {
  male: [
    [4, 0.936, 1.105, 13.8, 18.2],
    [6, 1.061, 1.251, 13.6, 19.1],
    [8, 1.175, 1.393, 13.6, 21.2],
    [10, 1.267, 1.515, 14.0, 23.7],
    [12, 1.357, 1.637, 14.7, 26.0],
    [14, 1.485, 1.788, 15.7, 27.9],
    [16, 1.588, 1.871, 16.8, 29.3],
    [18, 1.625, 1.895, 17.9, 30.6],
    [20, 1.633, 1.902, 18.7, 32.4],
  ],
  female: [
    [4, 0.931, 1.095, 13.5, 18.6],
    [6, 1.058, 1.253, 13.2, 19.8],
    [8, 1.173, 1.394, 13.3, 22.0],
    [10, 1.26, 1.513, 13.7, 24.6],
    [12, 1.374, 1.652, 14.5, 27.2],
    [14, 1.481, 1.729, 15.4, 29.4],
    [16, 1.504, 1.747, 16.4, 31.3],
    [18, 1.509, 1.753, 17.2, 33.1],
    [20, 1.511, 1.755, 17.4, 35.1],
  ],
};
const ADULT_ROW = 20;

/** kg/m2: no living body is outside (our judgement, wide on purpose). */
const POSSIBLE: readonly [number, number] = [8, 120];

const indexOf = ({ mass, stature }: Build): number => mass / stature ** 2;

export function checkBuild(build: Build): void {
  const index = indexOf(build);
  const [low, high] = POSSIBLE;
  if (index >= low && index <= high) return;
  const size = build.stature ** 2;
  throw new FieldError(
    'athlete.massKg',
    build.mass,
    `${(low * size).toFixed(1)} to ${(high * size).toFixed(0)} kg at a stature of ${build.stature} m (${low} to ${high} kg/m²; this is ${index.toFixed(1)} kg/m²)`,
  );
}

/** `isMeasured`: the mass of every segment was measured. */
export function listBuildNotes(build: Build, isMeasured: boolean): string[] {
  const outside = wordOutside(build);
  return [...listAgeNotes(build, isMeasured), ...(outside ? [`${outside.title} ${outside.detail}`] : [])];
}

/** Per cent within which the moments of a child's whole body are known (our judgement, docs/body.md). */
export const CHILD_MOMENTS = 15;
/** Years from which on a stated age is clear of the place where the two models meet (our judgement). */
const CLEAR_OF_SEAM = 20;
/** What the same stature and mass lose of the lateral moment from 15 to 18 years, per cent: measured 10.5 (girl) and 11.5 (boy) straight, 14.3 and 13.8 with arms overhead. */
const SEAM = {
  title: (age: number) => `${Math.floor(age)} years old: two body models meet below 18, 10 to 14 % apart in inertia.`,
  detail: `Two body models meet between ${JENSEN_AGES[1]} and ${ADULT_AGE} years: boys up to ${JENSEN_AGES[1]} (Jensen 1986, 1989), adults from ${ADULT_AGE} (de Leva 1996). At the same stature and mass a straight body loses 10 to 12 % of its moment of inertia about the lateral axis on the way, with arms overhead 14 %. Part of that is not growth: the two models divide the body into segments differently.`,
};

/** Of a stated age just past where the models meet; undefined of every other. */
export const wordSeam = ({ age }: Build): { readonly title: string; readonly detail: string } | undefined =>
  age !== undefined && age >= ADULT_AGE && age < CLEAR_OF_SEAM
    ? { title: SEAM.title(age), detail: SEAM.detail }
    : undefined;

function listAgeNotes({ sex, age }: Build, isMeasured: boolean): string[] {
  if (age === undefined || age >= CLEAR_OF_SEAM) return [];
  if (age >= ADULT_AGE) return isMeasured ? [] : [SEAM.detail];
  const [least, most] = JENSEN_AGES;
  const of =
    age > most ? `between those of boys at ${most} years and of adults at ${ADULT_AGE}` : 'of boys of this age';
  const masses = [
    `Segment masses are ${of} (Jensen 1986, 1989)${sex === 'female' ? ', used for a girl for want of others' : ''}${
      age < least ? `; below ${least} years they are those of ${least} years` : ''
    }.`,
  ];
  return [
    ...(isMeasured ? [] : [...masses, SEAM.detail]),
    `Lengths, mass centres and radii that were not measured keep an adult's shares; moments of inertia of the whole body are unverified, within ${CHILD_MOMENTS} % (our judgement).`,
  ];
}

/** A body outside the data that proportions are from; undefined for one inside. */
export function wordOutside(build: Build): { readonly title: string; readonly detail: string } | undefined {
  const { sex, stature, age } = build;
  const [years, low, high, lean, heavy] = rangeAt(RANGES[sex], age ?? ADULT_ROW);
  const index = indexOf(build);
  const outside = [
    ...(stature < low || stature > high
      ? [`${stature.toFixed(2)} m is outside ${low.toFixed(2)} to ${high.toFixed(2)} m`]
      : []),
    ...(index < lean || index > heavy
      ? [`${index.toFixed(1)} kg/m² is outside ${lean.toFixed(1)} to ${heavy.toFixed(1)} kg/m²`]
      : []),
  ];
  if (outside.length === 0) return undefined;
  const people = `${sex === 'female' ? 'girls and women' : 'boys and men'} of ${Number(years.toFixed(1))} years`;
  return {
    title: "This body's proportions are less known.",
    detail: `${outside.join(', and ')}, where 94 of 100 ${people} are (CDC growth charts 2000).${
      age === undefined && stature < low ? ' For a child state the age (ageYears).' : ''
    }`,
  };
}

function rangeAt(rows: readonly Row[], age: number): Row {
  const years = Math.max(rows[0][0], Math.min(rows[rows.length - 1][0], age));
  const next = Math.max(
    1,
    rows.findIndex((row) => row[0] >= years),
  );
  const [a, b] = [rows[next - 1], rows[next]];
  const s = (years - a[0]) / (b[0] - a[0]);
  return a.map((x, i) => x + s * (b[i] - x)) as unknown as Row;
}
