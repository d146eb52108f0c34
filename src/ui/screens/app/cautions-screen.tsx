// All cautions on one page, with the published table of noise.
import { allowedMinutes, tableLevels } from '../../../domain/cautions/allowed-noise';
import { addressOf } from '../../frame/route';
import { cautionsWords, durationWords } from '../../words/fall/cautions-words';
import { words } from '../../words/words';
import '../../parts/drawing/note-rows.css';
import '../../parts/charts/time-chart.css';

export function CautionsScreen() {
  return (
    <main class="screen cautions-page">
      <header class="top">
        <h1>{cautionsWords.title}</h1>
      </header>
      <List title={cautionsWords.everybody} entries={cautionsWords.always} />
      <List title={cautionsWords.untrained} entries={cautionsWords.untrainedDont} />
      <h2>{cautionsWords.loud}</h2>
      <p>{cautionsWords.loudWhy}</p>
      <table class="course">
        <thead>
          <tr>
            <th scope="col">{cautionsWords.level}</th>
            <th scope="col">{cautionsWords.longest}</th>
          </tr>
        </thead>
        <tbody>
          {tableLevels.map((level) => (
            <tr key={level}>
              <th scope="row">{level}</th>
              <td>{durationWords(allowedMinutes(level))}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="quiet">{cautionsWords.loudSource}</p>
      <p class="hint warn">{cautionsWords.noMeter}</p>
      <h2>{cautionsWords.aid}</h2>
      <p>{cautionsWords.aidWhy}</p>
      <footer class="actions">
        <a class="button" href={addressOf('rack')}>
          {words.rack}
        </a>
      </footer>
    </main>
  );
}

function List({ title, entries }: { readonly title: string; readonly entries: readonly string[] }) {
  return (
    <>
      <h2>{title}</h2>
      <ul class="cautions">
        {entries.map((entry) => (
          <li key={entry}>{entry}</li>
        ))}
      </ul>
    </>
  );
}
