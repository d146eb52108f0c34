// What is looked at after a fall, as a line drawing: grey is the pan, the heavy line is what is looked for.
import type { ComponentChildren } from 'preact';
import type { LookKind } from '../../../domain/records/look-kinds';

export const LookPicture = ({ look }: { readonly look: LookKind }) => (
  <svg class="look-picture" viewBox="0 0 160 100" aria-hidden="true" data-picture={look}>
    {pictures[look]}
  </svg>
);

/** From the side: the rim above, the skirt under it. */
const Drum = () => (
  <path d="M30 36v34c0 12 100 12 100 0v-34M30 36a50 13 0 0 0 100 0 50 13 0 0 0-100 0z" />
);

/** From above. */
const Face = ({ children }: { readonly children?: ComponentChildren }) => (
  <>
    <circle cx="80" cy="50" r="44" />
    <ellipse cx="80" cy="24" rx="17" ry="11" />
    <ellipse cx="55" cy="62" rx="15" ry="11" transform="rotate(-40 55 62)" />
    <ellipse cx="105" cy="62" rx="15" ry="11" transform="rotate(40 105 62)" />
    {children}
  </>
);

const pictures: Readonly<Record<LookKind, ComponentChildren>> = {
  'sharp-edges': (
    <>
      <Drum />
      <path class="look-for" d="M96 47l5-20 5 14 7-22 3 24" />
    </>
  ),
  crack: (
    <Face>
      <path class="look-for" d="M36 45l14-4 6 8 12-9 8 7 10-6" />
    </Face>
  ),
  rim: (
    <>
      <path d="M30 40v32c0 12 100 12 100 0V40" />
      <path class="look-for" d="M30 40c10-16 34-14 46-5s12 16 24 6 22-10 30-1" />
      <path class="look-at" d="M4 48h18m-7-6 7 6-7 6" />
    </>
  ),
  skirt: (
    <>
      <path d="M30 30v42c0 12 100 12 100 0M30 30a50 12 0 0 0 100 0 50 12 0 0 0-100 0z" />
      <path class="look-for" d="M130 30v10l-14 8 14 10v14" />
      <path d="M146 22v70M138 92h16" />
    </>
  ),
  hangers: (
    <>
      <path d="M26 50l104-12v34c0 12-104 12-104 0zM16 12v16M144 12v8" />
      <path class="look-for" d="M16 28c-10 8-4 18 4 14l6 8M144 20c10 6 6 16-2 12l-12 6" />
    </>
  ),
  stand: (
    <>
      <path d="M40 8h80M48 8v34c0 8 64 8 64 0V8M80 50v20M80 70 52 94" />
      <path class="look-for" d="M80 70c10 0 14 4 14 12s8 6 16 12" />
    </>
  ),
  heat: (
    <>
      <path d="M26 60v24c0 12 84 12 84 0V60M26 60a42 11 0 0 0 84 0 42 11 0 0 0-84 0z" />
      <circle class="look-for" cx="130" cy="26" r="13" />
      <path
        class="look-for"
        d="M130 2v6M130 44v6M106 26h6M148 26h6M113 9l4 4M147 43l-4-4M113 43l4-4M147 9l-4 4"
      />
    </>
  ),
  water: (
    <>
      <Drum />
      <path
        class="look-for"
        d="M44 42c14 8 58 8 72 0M70 4c-6 9-6 14 0 14s6-5 0-14zM92 10c-6 9-6 14 0 14s6-5 0-14z"
      />
    </>
  ),
};
