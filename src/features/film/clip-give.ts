/** Where a value of a clip goes: into the take-off of A as one step of the skill, or as a line into the open estimate sheet. */
import { clipSheetLine } from '../../../sim/words/clip-words.ts';
import type { Page } from '../../app/page.ts';
import { wordFault } from '../../app/say/fault-words.ts';
import { isGiven, jumpEditsOf, sayField, whatLaunches } from '../../app/takeoff-values.ts';
import { type Field, getFields } from '../../document/fields.ts';
import { soften } from '../../ui/numbers.ts';
import { type GivenField, type GivenRow, sayAs, sayClip } from './clip-values.ts';
import { clipTexts as t } from './clip-words.ts';

/** Undefined: it can be given. */
export function whyNoTakeoff({ doc, flight }: Page): string | undefined {
  const by = whatLaunches(doc.file());
  if (by && isGiven(doc.file())) return t.launchedBy[by];
  return flight.id() === doc.id() ? undefined : t.notFlown;
}

function takeoffField(page: Page, id: GivenField): Field | undefined {
  const { doc, flight, services, athletes } = page;
  const result = flight.result();
  const by = jumpEditsOf(services.flying.jumping, result, athletes.kept());
  return getFields(doc.file(), doc.athlete(), result.jump, by).find((field) => field.id === id);
}

export function giveTakeoff(page: Page, id: GivenField, row: GivenRow): void {
  const { doc, shell } = page;
  const why = whyNoTakeoff(page);
  const field = why === undefined ? takeoffField(page, id) : undefined;
  const { value } = row.clip;
  if (!field) {
    shell.notify({ text: why ?? t.noField(soften(row.label)) });
    return;
  }
  if (!(value >= field.min && value <= field.max)) {
    shell.notify({ text: t.outOfRange(row.label, sayClip(row)) });
    return;
  }
  try {
    const next = { ...field, value };
    doc.edit(field.write(doc.file(), value), t.takeoffStep(row.label, sayField(next)));
    // it is a step of the skill: undo takes it back there
    shell.takeUndo(undefined);
    shell.notify({
      text: t.tookOff(row.label, sayAs(row, field.value), sayClip(row)),
      action: { title: t.undo, run: () => doc.undo() },
    });
  } catch (error) {
    shell.notify({ text: wordFault(error) });
  }
}

/** `hz`: frames a second that it was read at. */
export async function giveSheet({ shell }: Page, row: GivenRow, hz: number): Promise<void> {
  try {
    const title = await shell.sheetDoor.give((taken) => clipSheetLine(row, hz, taken));
    shell.notify({
      text: t.addedTo(title),
      action: { title: t.openEstimate, run: () => shell.openTool('estimate') },
    });
  } catch (error) {
    shell.notify({ text: wordFault(error) });
  }
}
