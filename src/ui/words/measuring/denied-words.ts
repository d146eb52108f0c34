// How to allow a microphone that was denied, on the two kinds of phones. Menus differ a little from version to version
// (common practice, no source).

export const deniedWords = [
  {
    phone: 'On an iPhone',
    steps: [
      'In the browser: tap the sign beside the address, then Website Settings, Microphone, Allow.',
      'On the home screen: open the phone’s Settings, find the browser among the apps, then Microphone, Allow.',
      'Come back here and tap Try again. If nothing happens, close the app and open it again.',
    ],
  },
  {
    phone: 'On an Android phone',
    steps: [
      'Tap the sign left of the address, then Permissions, and switch the microphone on.',
      'Is it greyed out? Open the phone’s Settings, Apps, your browser, Permissions, Microphone, Allow.',
      'Come back here and tap Try again.',
    ],
  },
] as const;
