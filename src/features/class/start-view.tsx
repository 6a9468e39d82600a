/** Three ways in: answer a worksheet, write one, read what a class handed in. */
import { createSignal, For } from 'solid-js';
import { texts } from '../../app/words.ts';
import { answerTexts } from './answer-words.ts';
import type { ClassRoomState } from './class-state.ts';
import { classTexts } from './words.ts';

const t = classTexts.start;

export function StartView(props: { room: ClassRoomState }) {
  const [link, setLink] = createSignal('');
  const openLink = (e: Event): void => {
    e.preventDefault();
    if (link().trim() !== '') props.room.receive([{ name: t.link, text: link() }]);
  };
  return (
    <div class="class-start">
      <header class="room-head">
        <h1>
          <b>{t.title}:</b> {t.lead}
        </h1>
      </header>
      <div class="class-ways">
        <section class="class-way">
          <h2>{t.answer}</h2>
          <p class="quiet">{t.answerWhy}</p>
          <button type="button" onClick={() => props.room.pick()}>
            {t.openFile}
          </button>
          <form class="class-link" onSubmit={openLink}>
            <label for="worksheet-link">{t.link}</label>
            <span>
              <input
                id="worksheet-link"
                type="text"
                maxLength={20_000}
                autocomplete="off"
                spellcheck={false}
                onInput={(e) => setLink(e.currentTarget.value)}
              />
              <button type="submit">{t.openLink}</button>
            </span>
          </form>
          <h3>{t.ready}</h3>
          <ul class="list">
            <For each={props.room.classing.ready}>
              {({ worksheet }) => (
                <li>
                  <button type="button" class="row-button" onClick={() => props.room.open(worksheet)}>
                    <span>
                      <b>{worksheet.title}</b>
                      <span class="note quiet">
                        {t.about(worksheet.questions.length, answerTexts.orders[worksheet.order])}
                      </span>
                    </span>
                  </button>
                </li>
              )}
            </For>
          </ul>
        </section>
        <section class="class-way">
          <h2>{t.write}</h2>
          <p class="quiet">{t.writeWhy(props.room.page.doc.file().title)}</p>
          <button type="button" onClick={() => props.room.show('write')}>
            {t.begin}
          </button>
        </section>
        <section class="class-way">
          <h2>{t.read}</h2>
          <p class="quiet">{t.readWhy}</p>
          <button type="button" onClick={() => props.room.pick()}>
            {t.choose}
          </button>
        </section>
      </div>
      <p class="standing">{texts.standingCaution}</p>
    </div>
  );
}
