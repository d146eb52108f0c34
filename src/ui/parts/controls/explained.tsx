// Words that not everybody knows: a tap shows one line.
import { type ExplainedWord, explainedWords, whatIs } from '../../words/explained-words';

export const Explained = ({ words }: { readonly words: readonly ExplainedWord[] }) => (
  <>
    {words.map((word) => (
      <details key={word} class="how-sure" data-word={word}>
        <summary>{whatIs(word)}</summary>
        <p>{explainedWords[word].means}</p>
      </details>
    ))}
  </>
);
