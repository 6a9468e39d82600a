/** What each contact gave: speed along and up, and turning; in the order of the chain. */
import { For, Show } from 'solid-js';
import type { WholeResult } from '../../jobs/kinds/whole-data.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { say, unitOf } from '../../ui/units.ts';
import { cardTexts as t } from './card-texts.ts';

const signed = (v: number): string => `${v >= 0 ? '+' : '−'}${formatNumber(Math.abs(v), 1)}`;

export function ContactGave(props: { whole: WholeResult }) {
  const lines = (): string[] =>
    props.whole.legs.flatMap(({ contact, vx, facing }) => {
      if (!contact?.course) return [];
      const { v_W, h_Scm_W } = contact.course.gave;
      const way = vx < 0 ? -1 : 1;
      const up = `${signed(v_W[1])} ${unitOf('speed')}`;
      return [
        t.gaveLine(t.where[contact.on], signed(way * facing * v_W[0]), up, say('momentum', Math.abs(h_Scm_W[2]))),
      ];
    });
  return (
    <Show when={lines().length > 0}>
      <section class="contact-gave">
        <h3>{t.gave}</h3>
        <For each={lines()}>{(line) => <p>{line}</p>}</For>
        <p class="quiet">{t.basisNote}</p>
      </section>
    </Show>
  );
}
