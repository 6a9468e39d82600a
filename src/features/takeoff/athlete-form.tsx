/** Who flies: name, sex, age, stature, mass, and what stays when that changes. */
import { Show } from 'solid-js';
import type { HumanAthlete } from '../../../sim/index.ts';
import { useAthletes, useDocument } from '../../app/page.ts';
import { isGiven } from '../../app/takeoff-values.ts';
import { texts } from '../../app/words.ts';
import type { KeptTurn } from '../../engine/jump.ts';
import { Choice } from '../../ui/choice.tsx';
import { BodyNotes, FieldGroup } from './fields.tsx';
import { takeoffTexts } from './words.ts';

const t = takeoffTexts.form;
const SEXES: readonly HumanAthlete['sex'][] = ['female', 'male'];
const KEPT: readonly KeptTurn[] = ['straight', 'momentum'];

export function AthleteForm() {
  const doc = useDocument();
  const athletes = useAthletes();
  const human = (): HumanAthlete | undefined => {
    const athlete = doc.athlete();
    return athlete.kind === 'human' ? athlete : undefined;
  };
  let name!: HTMLInputElement;
  const rename = (): void => {
    const typed = name.value.trim();
    if (typed === '' || typed === doc.athlete().name) name.value = doc.athlete().name;
    else athletes.rename(typed, takeoffTexts.changed(t.name));
  };
  return (
    <div class="athlete-form">
      <Show when={human()} fallback={<p class="quiet">{t.tree(doc.athlete().name)}</p>}>
        {(one) => (
          <>
            <label class="field name">
              {t.name}
              <input
                ref={name}
                type="text"
                name="athlete-name"
                autocomplete="off"
                maxlength={100}
                value={one().name}
                onBlur={rename}
                onKeyDown={(e) => {
                  if (e.key === 'Enter') rename();
                  else if (e.key === 'Escape' && name.value !== one().name) name.value = one().name;
                  else return;
                  e.preventDefault();
                  e.stopPropagation();
                }}
              />
            </label>
            <Choice
              legend={t.sex}
              names={SEXES}
              words={texts.change.sexes}
              chosen={one().sex}
              choose={(sex) => athletes.give({ ...one(), sex }, takeoffTexts.changed(t.sex))}
            />
          </>
        )}
      </Show>
      <FieldGroup group="athlete" main={false} />
      <BodyNotes />
      <Show when={!isGiven(doc.file())} fallback={<p class="quiet">{t.given}</p>}>
        <Choice legend={t.stays} names={KEPT} words={t.kept} chosen={athletes.kept()} choose={athletes.setKept} />
      </Show>
      <label class="check">
        <input
          type="checkbox"
          checked={athletes.isEverywhere()}
          onChange={(e) => athletes.setEverywhere(e.currentTarget.checked)}
        />
        {t.everywhere(doc.athlete().name)}
      </label>
    </div>
  );
}
