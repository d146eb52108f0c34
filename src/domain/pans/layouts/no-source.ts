/** Said of notes and places that no published page or drawing gives. */
export const noSource = 'We have no reliable source. Check against your pan.';
