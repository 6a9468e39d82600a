/** The command "export": a skill as a version 1 file, for builds that know no other. */
import { contactFor, exportVersion1, formatSkill, launch } from '../../sim/index.ts';
import { CLOSING } from './closing.ts';
import type { CommandCall } from './command-line.ts';
import { readSkill } from './read-input.ts';
import { checkApart, writeFiles } from './write-files.ts';

export async function runExport(command: CommandCall & { kind: 'export' }): Promise<string> {
  const { skill, file, athlete, inputs } = await readSkill(command.skill);
  const output = { option: '--out', file: command.out };
  checkApart([output], inputs);
  // a swing or a known contact gives the take-off that a version 1 file states
  const { takeoff } = launch(skill, await contactFor({ start: skill.start }));
  writeFiles([{ ...output, pieces: [formatSkill(exportVersion1(file, takeoff, athlete))] }]);
  return `${file.title}: written as version 1\n\n${CLOSING}\n`;
}
