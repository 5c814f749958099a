/** What a tablet says of badges; as `station`, it goes into the tablet's script. */
export const stationBadge = {
  show: 'Show your badge',
  title: 'Show your badge',
  back: 'Back to the names',
  judging: 'Asking the book whose badge it is.',
  none: 'This is no badge.',
  several: 'More than one badge is in the picture. Hold a single one into it.',
  offline: 'A badge can only be checked while the book answers.',
  camera: {
    none: 'This tablet has no camera that the page can use. Log on by your PIN.',
    refused:
      'The browser keeps the camera from this page. Allow it in the browser’s settings for this address, or log on by your PIN.',
    busy: 'The camera cannot be used now; another app may have it. Close that one and try again, or log on by your PIN.',
    reader:
      'What reads codes is not on this tablet yet. It comes once the network answers; log on by your PIN until then.',
  },
} as const
