/** What a push gives and asks: force, work and movement of the contact, beside what is usual there. */
import { For, Show } from 'solid-js';
import type { ContactReport } from '../../../sim/index.ts';
import { DEG } from '../../../sim/math/angles.ts';
import {
  contactCautionDetail,
  contactCautionTitle,
  LOADS_NOT_COMPARED,
  wordContactRange,
  wordPossible,
} from '../../../sim/words/contact-words.ts';
import { sentence } from '../../../sim/words/verdict-words.ts';
import type { ContactResult } from '../../jobs/kinds/leg-data.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { say } from '../../ui/units.ts';
import { ReportRows } from './report-rows.tsx';
import { contactTexts } from './words.ts';

const t = contactTexts;
const c = t.contactRows;
type Row = readonly [string, string];

export function PushSection(props: { contact: ContactResult }) {
  const lean = (): string =>
    `${formatNumber(Math.abs(props.contact.leanDeg), 0)}° ${props.contact.leanDeg >= 0 ? t.forward : t.backward}`;
  const rows = (): Row[] => [
    [c.impulse, `${formatNumber(props.contact.impulse, 0)} N·s`],
    [c.lean, lean()],
    [c.lever, say('length', Math.abs(props.contact.lever))],
    [c.angular, say('momentum', Math.abs(props.contact.angularImpulse))],
    ...(props.contact.report ? reportRows(props.contact.report) : []),
    [c.energy, energy(props.contact)],
    [c.friction, formatNumber(props.contact.frictionNeeded, 2)],
  ];
  const cautions = () => props.contact.report?.cautions ?? [];
  return (
    <section class="report">
      <h3>{t.contact}</h3>
      <p>
        <b class="big">{formatNumber(props.contact.bodyWeights, 1)}</b> {t.values.force}, {c.mean}
        <span class="quiet"> {t.stopping(formatNumber(props.contact.time, 2))}</span>
      </p>
      <p class="verdict" classList={{ falls: props.contact.faults.length > 0 }} role="status" data-testid="possible">
        {wordPossible(props.contact.faults).map(sentence).join(' ')}
      </p>
      <Show when={cautions().length > 0}>
        <p>
          <b>{t.outside}</b>
        </p>
        <ul class="list" data-testid="outside">
          <For each={cautions()}>
            {(one) => (
              <li>
                <b>{contactCautionTitle(one)}</b> {contactCautionDetail(one)}
              </li>
            )}
          </For>
        </ul>
      </Show>
      <ReportRows rows={rows()} />
      <p class="quiet">
        {!props.contact.report
          ? t.placeUnknown
          : props.contact.report.contact?.loadsCompared === false
            ? sentence(LOADS_NOT_COMPARED)
            : ''}
      </p>
    </section>
  );
}

function energy({ energy: J, report }: ContactResult): string {
  const total = J >= 0 ? t.adds(say('energy', J)) : t.takes(say('energy', -J));
  if (!report?.contact) return total;
  const { work, brought } = report.contact;
  return t.range(total, t.perMass(formatNumber(work, 1), formatNumber(brought, 1)));
}

function reportRows(report: ContactReport): Row[] {
  const { out, momentum, ranges, contact } = report;
  if (!contact) return [];
  const { bed, course, peak } = contact;
  const compared = (value: string, kind: keyof typeof ranges): string => {
    const range = ranges[kind];
    return range ? t.range(value, wordContactRange(kind, range, report)) : value;
  };
  const speeds = ({ along, up }: typeof out): string =>
    t.speeds(say('speed', along), say('speed', Math.abs(up)), up < 0);
  const about = ([low, high]: readonly [number, number]): string =>
    t.bodyWeights(t.fromTo(formatNumber(low, 1), formatNumber(high, 1)));
  return [
    [c.time, compared(`${formatNumber(contact.time * 1000, 0)} ms`, 'time')],
    [c.comes, speeds(contact.in)],
    [c.leaves, compared(speeds(out), 'upOut')],
    [c.takes, compared(say('momentum', momentum), 'momentum')],
    [c.up, compared(t.bodyWeights(formatNumber(contact.mean.up, 1)), 'meanUp')],
    bed
      ? [c.bed, t.bed(say('length', bed.depth), formatNumber(bed.peak, 1), formatNumber(bed.held, 1))]
      : [c.peak, about(peak.up)],
    ...(course
      ? ([
          [c.turns, `${formatNumber(Math.abs(course.turned) * DEG, 0)}°`],
          [c.travels, `${say('length', Math.abs(course.moved_W[0]))}, ${say('length', course.moved_W[1])}`],
        ] as Row[])
      : []),
  ];
}
