/** Open and save as files. */
import { Show } from 'solid-js';
import { useDocument } from './page.ts';
import { texts } from './words.ts';

export function FileButtons() {
  const doc = useDocument();
  return (
    <>
      <button type="button" onClick={() => doc.openFile()}>
        {texts.bar.open}
      </button>
      <button type="button" onClick={() => doc.saveFile()}>
        {texts.bar.save}
      </button>
      <Show when={doc.hasOriginal()}>
        <button type="button" title={texts.bar.saveOriginalWhy} onClick={() => doc.saveOriginal()}>
          {texts.bar.saveOriginal}
        </button>
      </Show>
      <button type="button" onClick={() => doc.saveVersion1()}>
        {texts.bar.saveVersion1}
      </button>
    </>
  );
}
