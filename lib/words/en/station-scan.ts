/** What a tablet says while it reads codes by its camera; as `station`, it goes into the tablet's script. */
export const stationScan = {
  go: 'Scan a slip',
  goNext: 'Scan another slip',
  title: 'Scan a slip',
  picture: 'What the camera sees',
  starting: 'Opening the camera.',
  hold: 'Hold the code in the middle of the picture, a hand’s width away.',
  code: 'Code of the dough',
  codeNote: 'Or type the three digits that stand beside the code.',
  open: 'Open',
  label: 'Scan the label',
  labelEnd: 'Close the camera',
  camera: {
    none: 'This tablet has no camera that the page can use. Type the code instead.',
    refused:
      'The browser keeps the camera from this page. Allow it in the browser’s settings for this address, or type the code instead.',
    busy: 'The camera cannot be used now; another app may have it. Close that one and scan again, or type the code instead.',
    reader: 'What reads codes is not on this tablet yet. It comes once the network answers; type the code until then.',
  },
  again: 'Try the camera again',
  notHere:
    'The dough of this slip is not among those on this tablet: it is not begun yet, its trial has ended, or it is another bakery’s.',
  elsewhere: 'This is a slip of another bakery.',
  several: 'More than one code is in the picture. Hold a single one into it.',
  sameCode: 'Several doughs here have the code {code}. Choose one in the list of doughs.',
  noSlip: '“{text}” is no slip of a piece and no code of a dough that is on this tablet.',
  empty: 'There is nothing in this code.',
  badge: 'This is somebody’s badge. It is shown where the names are.',
  slip: 'This is the slip of a piece, not the label of a lot.',
} as const
