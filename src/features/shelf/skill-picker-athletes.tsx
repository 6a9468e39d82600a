/** Athletes to give to the open skill: the user's own and the demo athletes, and the one of the skill to keep. */

import { For, Show } from 'solid-js';
import type { Athlete } from '../../../sim/index.ts';
import { jsonText } from '../../../sim/math/json-text.ts';
import { fileName, saveText } from '../../app/file-door.ts';
import { NoticeLine } from '../../app/notice-line.tsx';
import { useAthletes, useDocument, useServices } from '../../app/page.ts';
import { useShelf } from '../../app/shelf.ts';
import { shelfTexts } from '../../app/shelf-words.ts';
import { texts } from '../../app/words.ts';
import { say } from '../../ui/units.ts';
import { EachEntry, ShelfRow } from './skill-picker.tsx';
import { pickerTexts } from './words.ts';

const t = { ...shelfTexts, ...pickerTexts };

const wordSize = (a: Athlete): string =>
  a.kind === 'human' ? `${say('length', a.statureM)}, ${say('mass', a.massKg, 0)}` : '';

/** An athlete's file, as the command line reads it too. */
const formatAthlete = (athlete: Athlete): string =>
  `${jsonText({ format: 'shapeflight-athlete', version: 1, athlete })}\n`;

export function AthletePicker() {
  const doc = useDocument();
  const services = useServices();
  const shelf = useShelf();
  const athletes = useAthletes();
  const own = (): Athlete => doc.athlete();
  const isOwn = (a: Athlete): boolean => JSON.stringify(a) === JSON.stringify(own());
  return (
    <>
      <NoticeLine inSheet />
      <p class="sheet-actions">
        <button type="button" onClick={() => void shelf.saveAthlete(own())}>
          {t.saveAthlete}
        </button>
        <button type="button" onClick={() => saveText(fileName(own().name), formatAthlete(own()))}>
          {t.saveAthleteFile}
        </button>
      </p>
      <h3>{t.myAthletes}</h3>
      <Show when={shelf.athletes().length === 0}>
        <p class="quiet">{shelf.refused() ? t.notAvailable : t.noAthletes}</p>
      </Show>
      <ul class="list" aria-label={t.myAthletes}>
        <EachEntry entries={shelf.athletes()}>
          {(entry) => (
            <ShelfRow
              entry={entry()}
              name={entry().value.name}
              note={[entry().value.club, wordSize(entry().value)].filter(Boolean).join(', ')}
              current={isOwn(entry().value)}
              onPick={() => shelf.give(entry().value)}
            />
          )}
        </EachEntry>
      </ul>
      <h3>{t.demoAthletes}</h3>
      <ul class="list" aria-label={t.demoAthletes}>
        <For each={services.presets.athletes}>
          {({ id, athlete }) => (
            <li>
              <button
                type="button"
                class="row-button"
                aria-current={isOwn(athlete) ? 'true' : undefined}
                onClick={() => athletes.give({ ref: id }, t.given(athlete.name))}
              >
                <span>
                  <b>{athlete.name}</b>
                  <span class="quiet note">{athlete.club}</span>
                </span>
                <span class="quiet">{wordSize(athlete)}</span>
              </button>
            </li>
          )}
        </For>
      </ul>
      <p class="standing">{texts.standingCaution}</p>
    </>
  );
}
