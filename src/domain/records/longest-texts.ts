// How long a text of a record may be, characters: what is longer is cut when it is read, so the fields of the forms
// take no more.

export const longestOfPan = {
  name: 80,
  owner: 200,
  maker: 200,
  serial: 200,
  finish: 200,
  remarks: 10_000,
  wanted: 2_000,
  wantedBy: 200,
} as const;

export const longestOfVisit = { who: 200, done: 10_000, remarks: 10_000 } as const;

export const longestOfKnock = { remarks: 10_000 } as const;
