// What moves what: the faults on which field tuners agree, each with its places on the oval of the note.
import { tradeCases } from '../../../domain/advice/trade-cases';
import { addressOf } from '../../frame/route';
import { PlacePicture } from '../../parts/drawing/place-picture';
import { cautionsWords } from '../../words/fall/cautions-words';
import { adviceWords } from '../../words/measuring/advice-words';
import {
  sourceWords,
  tradeFaultWords,
  tradePlacesWords,
  whatMovesWords,
} from '../../words/measuring/what-moves-words';
import { words } from '../../words/words';

export function WhatMovesScreen() {
  return (
    <main class="screen what-moves">
      <header class="top">
        <h1>{whatMovesWords.title}</h1>
      </header>
      <p>{whatMovesWords.why}</p>
      <p class="hint warn">{adviceWords.settingsWhy}</p>
      <p class="hint">{whatMovesWords.rule}</p>
      <h2>{whatMovesWords.faults}</h2>
      <p class="aside">{whatMovesWords.marks}</p>
      {tradeCases.map((each) => (
        <section key={each.fault} class="what-moves-row" data-fault={each.fault}>
          <PlacePicture places={each.places} />
          <div>
            <h3>{tradeFaultWords(each)}</h3>
            <p>{tradePlacesWords(each)}</p>
            {each.isFoundByTrying && <p>{whatMovesWords.found}</p>}
            <p class="quiet">{sourceWords(each)}</p>
          </div>
        </section>
      ))}
      <h2>{whatMovesWords.leave}</h2>
      <ul class="cautions">
        {whatMovesWords.leaves.map((each) => (
          <li key={each}>{each}</li>
        ))}
      </ul>
      <p class="quiet">{whatMovesWords.sizes}</p>
      <a class="caution" href={addressOf('cautions')}>
        {cautionsWords.more}
      </a>
      <footer class="actions">
        <a class="button" href={addressOf('rack')}>
          {words.rack}
        </a>
        <button type="button" onClick={() => window.history.back()}>
          {words.back}
        </button>
      </footer>
    </main>
  );
}
