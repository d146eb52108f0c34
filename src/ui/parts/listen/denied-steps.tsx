// What to do on which phone when the microphone was denied. Loads when it is needed.
import { deniedWords } from '../../words/measuring/denied-words';

export const DeniedSteps = () => (
  <div class="denied-steps">
    {deniedWords.map(({ phone, steps }) => (
      <details key={phone} class="how-sure">
        <summary>{phone}</summary>
        <ol>
          {steps.map((step) => (
            <li key={step}>{step}</li>
          ))}
        </ol>
      </details>
    ))}
  </div>
);
