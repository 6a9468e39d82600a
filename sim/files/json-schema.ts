/** The published JSON Schemas of files (docs/*.schema.json), made from the schemas that parsing uses. */
import { type ConversionConfig, toJsonSchema } from '@valibot/to-json-schema';
import type { GenericSchema } from 'valibot';
import { athleteFileSchema } from './athlete-schema.ts';
import { recordingMapSchema } from './recording-map-file.ts';
import { sheetSchema } from './sheet-file.ts';
import { skillSchema } from './skill-schema.ts';
import { worksheetSchema } from './worksheet-file.ts';

interface Published {
  readonly schema: GenericSchema;
  readonly title: string;
  readonly description: string;
}

/** By the name that the file in docs begins with. Where the meaning goes beyond what JSON Schema says, the docs hold. */
export const PUBLISHED: Readonly<
  Record<'skill-file' | 'athlete-file' | 'sheet-file' | 'worksheet-file' | 'recording-map', Published>
> = {
  'skill-file': {
    schema: skillSchema,
    title: 'Shapeflight skill file',
    description:
      'A skill: athlete, phases in the order of time, target. What a flight states of its take-off depends on the phase before it: docs/skill-file.md.',
  },
  'athlete-file': {
    schema: athleteFileSchema,
    title: 'Shapeflight athlete file',
    description: 'An athlete: measures of a human, or a tree of segments. docs/skill-file.md.',
  },
  'sheet-file': {
    schema: sheetSchema,
    title: 'Shapeflight estimate sheet',
    description: 'Lines of formulas with units and their spread. docs/estimate.md.',
  },
  'worksheet-file': {
    schema: worksheetSchema,
    title: 'Shapeflight worksheet',
    description: 'A skill, a sheet and questions, and what one student answered. docs/worksheet.md.',
  },
  'recording-map': {
    schema: recordingMapSchema,
    title: 'Shapeflight map of a recording',
    description: 'What joints, points and columns of a recording are on a body. docs/recording.md.',
  },
};

const CONFIG: ConversionConfig = { errorMode: 'throw', typeMode: 'input' };

export function formatJsonSchema(name: keyof typeof PUBLISHED): string {
  const { schema, title, description } = PUBLISHED[name];
  const { $schema, ...rest } = toJsonSchema(schema, CONFIG);
  return `${JSON.stringify({ $schema, title, description, ...rest }, null, 2)}\n`;
}
