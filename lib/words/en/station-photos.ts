/** What a tablet says of photos. It goes into the tablet's script. */
export const stationPhotos = {
  go: 'Take a photo',
  ofDough: 'Photo of dough {code}',
  ofPiece: 'Photo of dough {code}, piece {piece}',
  ofLabel: 'Label of lot {code}, {ingredient}',
  labelCaution:
    'Show the whole label, so that its code and its days can be read, and no people. It is shown beside the lot under Stores.',
  rowOfLabel: 'Label of lot {code}',
  rowOfAnyLabel: 'Label of a lot',
  caution:
    'Show bread and dough, and no people: what local rules say of pictures of staff and customers holds here too. Everybody here sees it, so show nothing that tells which dough it is.',
  atOnce: 'It is kept on this tablet as soon as it is taken.',
  take: 'Open the camera',
  keeping: 'Keeping it on this tablet.',
  unreadable: 'This tablet cannot read that as a picture. Take it once more.',
  notKept:
    'This photo could not be kept on the tablet. Send what is on it, or free some room, and take it once more. Readings go on as before.',
  here: 'Photos taken here',
  row: 'Dough {code}, photo',
  rowOfPiece: 'Dough {code}, photo of piece {piece}',
} as const
