/** Why something was not done, and what to do about it. Keyed by the refusal's code. */
export const refusals = {
  invalid: 'Not kept yet. Put right what is marked below.',
  'not-signed-in': 'You are signed out. Sign in again; what you typed is still here.',
  'not-allowed': 'This is not yours to do here. Ask the owner or the head baker.',
  'not-found': 'There is nothing here under this address.',
  stale: '{who} changed this at {at}. What you typed is kept below; look at the change, then send it again.',
  'stale-moved-on': 'This has moved on since you opened it. Look at how it stands now.',
  'wrong-password': 'That is not your password. Nothing was signed.',
  'too-many-tries': 'Too many wrong tries. Wait a quarter of an hour, or ask the owner for a new password link.',
  'too-many-pins':
    'Too many wrong PINs. Wait a quarter of an hour, or choose a new PIN at the desk under your account.',
  'too-many-badges': 'Too many wrong tries at this tablet. Wait a quarter of an hour.',
  'wrong-badge':
    'This badge does not hold any more, or is another bakery’s. Log on by the PIN, and ask for a new badge.',
  'badge-wants-pin': 'A badge is for somebody who has a PIN: some things at a tablet want it all the same.',
  'too-many-codes': 'Too many wrong codes. Wait a quarter of an hour.',
  'pin-again': 'Type your PIN again: it was given too long ago, or somewhere else.',
  'too-many-following':
    'This is open in too many places at once to show every change as it comes. It asks now and then instead.',
  'outcome-unknown':
    'The connection broke at the last moment, and it is not certain whether this was kept. Look before you send it again.',
  away: 'The bakery’s book does not answer. Nothing was kept; try again in a moment.',
  'took-too-long':
    'This was not worked out within {seconds} seconds, so it was stopped. Nothing was changed. Try again when less is going on.',
  'not-worked-out': 'This could not be worked out just now. Nothing was changed; try again in a moment.',
  'link-dead': 'This link has been used, withdrawn or is over a day old. Ask for a new one.',
  'wrong-sign-in':
    'E-mail or password is wrong, or there were too many tries. After several wrong tries, wait a quarter of an hour.',
  'last-owner': 'A bakery needs an owner. Make somebody else an owner first.',
  'own-role': 'You cannot change your own role or switch yourself off. Another owner does that.',
  'doughs-open': {
    one: 'One dough is still open. Measure it, or stop the trial early with a reason.',
    other: '{count} doughs are still open. Measure them, or stop the trial early with a reason.',
  },
  discarded: 'This draft was dropped. Draft a new version, from it or from another.',
  'drafted-from-trial': 'This is the dough that was baked; draft a new version to change it.',
  'decided-draft':
    'This draft comes from a decision on a trial. Take the decision back, and the draft is dropped with it.',
  'trial-not-ended': 'This trial is not ended. Close it, or stop it early, then decide.',
  'already-decided': '{who} has decided on this trial already: decision {number}. Take that back first.',
  'unknown-format':
    'This is written in form {format}, and this Evendough is too old to know that. It is kept as it is; a newer Evendough shows it.',
  'damaged-text':
    'What is kept here is not what was written: it does not fit its seal. Nothing of it is shown. Tell whoever looks after this install, and change nothing.',
  signed: 'This version has been signed, so nothing of it changes any more. Draft a new version from it.',
  'own-proposal': 'You drafted this, so a second person signs it. Ask the owner or the head baker.',
  'already-signed': 'You have signed this version already. It waits for another signature.',
  'not-your-signature': 'Your signature is not the one that this version waits for.',
  'content-moved-on':
    'An ingredient of this version was changed in the stores since you opened it, or since the first signature. Nothing was signed; look at how it stands now.',
  'co-author': 'You wrote part of this plan, so somebody who did not decides on it.',
  'own-plan': 'You proposed this plan, so a second person decides on it. Ask the owner or the head baker.',
  'not-your-proposal': 'Only who proposed this plan can withdraw it. The head baker or the owner can send it back.',
  'plan-moved-on': 'This is not the plan that you had before you. Nothing was decided; look at how it stands now.',
  'plan-not-possible': 'The plan cannot be worked out.',
  'no-tap':
    'The plan cannot be worked out: nobody says how warm the tap is. Put it among the equipment, or write it in the draft.',
  'dose-without-active':
    'The plan cannot be worked out: a dose is of the active substance of {ingredient}, and the stores do not say how much it has. Change the dose, or state it in the stores.',
  'day-begun': 'A dough of mixing day {day} is begun already, so its date stands.',
  'trial-not-approved': 'This trial is not approved. Ask the head baker.',
  'trial-closed':
    'This trial is closed, and nothing more is added to it. What is wrong or missing is proposed as an amendment, on its result.',
  'trial-stopped':
    'This trial was stopped, and nothing more is added to it. What is wrong or missing is proposed as an amendment, on its result.',
  'seal-broken':
    'What is in the book is not what was closed; the result says where. Nothing is decided until that is cleared up.',
  'not-as-planned':
    'Dough {code} is not the one that the approved plan drew for it. Nothing was closed; tell the owner, who should look at the record.',
  'gaps-without-reason': {
    one: 'One thing is missing, not settled or outside what is usual. Put it right, or say why you go on.',
    other: '{count} things are missing, not settled or outside what is usual. Put them right, or say why you go on.',
  },
  'clean-down-first':
    'Clean down bench, bowl and tools before this batch: another dough brought an allergen that this one must not carry.',
  'dough-key-closed':
    'The weights say which dough this is. Open its key first; it stands in the record that you know it.',
  'plan-unreadable':
    'The weights of this dough cannot be read, so they are not shown. Do not mix from memory; ask the head baker. Readings can go on.',
  'before-its-turn': 'Batch {code} comes first. The order was drawn at random; say why this one goes before it.',
  'not-the-next-step': 'The batch cannot go there from where it is. Look at how it stands now.',
  'nothing-to-undo': 'There is nothing here to take back.',
  'undo-not-yours': 'Somebody else did this. Tell them, or say in a reason what was wrong.',
  'undo-too-late': 'This can be taken back for ten seconds, and they are over.',
  'undo-built-on': 'Something was written since, so this cannot be taken back any more.',
  'not-out': 'Batch {code} is neither lost nor set aside nor left unbaked, so there is nothing to bake again.',
  'baked-again-already': 'Batch {code} is baked again already, as batch {again}.',
  'mixing-day-over':
    'Mixing day {day} is over, so batch {code} cannot be baked again. The head baker can add a whole day.',
  'day-added-for': 'A mixing day was added for mixing day {day} already.',
  'day-whole': 'Mixing day {day} is not short of any batch, so no day is added for it.',
  'codes-used-up': 'There are no codes left for more batches in this trial.',
  'not-of-one-day': 'Only two batches of one mixing day can exchange their places.',
  'exchange-of-waiting': 'One of the two is begun or out already. Only batches that wait can exchange their places.',
  'batch-not-begun': 'This batch is not begun yet. Begin it first.',
  'batch-not-baked': 'This batch was not baked, so there is nothing to write down of it.',
  'not-begun-not-lost': 'This batch was never begun, so it cannot be lost or set aside. Say that it was not baked.',
  'begun-so-baked': 'This batch was begun, so it is not one that was not baked. It can be lost or set aside.',
  'read-before-any-cause':
    'What decides the trial was read of this batch already, and nothing was noted before that. It counts: note what happened, go on, and the result tells it. What shows it and was found only now takes a second person’s signature.',
  'rows-at-fault': {
    one: 'Nothing was stored: one thing in the file is at fault.',
    other: 'Nothing was stored: {count} things in the file are at fault.',
  },
  'odd-reading': 'Outside what is usual here, {least} to {most} {unit}. Look again. If it is right, send it confirmed.',
  'weighing-only-left':
    'A weighing that came too late is left aside. Whoever weighed writes at the batch what was wrong there, and why.',
  'nothing-weighed': 'Nothing is written yet. Say of at least one line what went in.',
  'nothing-on-sheet': 'Nothing is written yet. Key in at least one value.',
  'line-not-in-plan': 'The plan of this trial has no such line, so nothing was kept.',
  'odd-weighing':
    'Not kept yet: that is far from what any dough of this trial has of it. Was it grams or kilograms? Look again. If it is right, confirm it.',
  'reading-clash':
    'Another reading is in the book under this one’s number. Nothing was overwritten; show both to the head baker.',
  'count-clash': 'Another count is in the book under this one’s number. Nothing was overwritten; count once more.',
  'check-clash':
    'Another check is in the book under this one’s number. Nothing was overwritten; keep this one once more.',
  'step-clash':
    'Another step is in the book under this one’s number. Nothing was overwritten; keep this one once more.',
  'note-clash':
    'Another note is in the book under this one’s number. Nothing was overwritten; write this one once more.',
  'photo-clash':
    'Another photo is in the book, or on its way, under this one’s number. Nothing was overwritten; take this one once more.',
  'photo-not-a-picture': 'This is no photo that can be kept. JPEG, PNG and WebP can be.',
  'photo-heic':
    'This photo is a HEIC, which cannot be kept. Set the camera to JPEG, often called ‘most compatible’, and take it again.',
  'photo-cut-off': 'Part of this photo is missing, so it was not kept. Take it again, or choose it once more.',
  'photo-moves': 'There is more than one picture in this. A single photo can be kept.',
  'photo-unreadable': 'This photo cannot be read, so it was not kept. Take it again.',
  'photo-too-large': 'This photo is too large: 8 MB is the most. Set the camera to a smaller size, and take it again.',
  'photo-too-many-pixels':
    'This photo is too large: 50 million pixels are the most. Set the camera to a smaller size, and take it again.',
  'too-many-photos': 'Many photos came from here lately. Wait until they are in the book, or an hour.',
  'dough-full-of-photos': 'This dough has {count} photos, and no more are kept of one.',
  'label-full-of-photos': 'This label has {count} photos, and no more are kept of one.',
  'no-room-for-photos':
    'The book has no more room for photos, so this one was not kept. Readings and notes are kept. Tell whoever looks after this install.',
  'photos-busy': 'Many photos come in at once. This one is kept in a moment; try again.',
  'cause-clash':
    'Something else that went wrong is in the book under this one’s number. Nothing was overwritten; note this once more.',
  'own-note': 'You wrote this, so somebody else says that they have read it.',
  'reading-there':
    'There is a reading in this place already. Correct that one, or log this as the next repeat if one is asked for.',
  'no-further-repeat': {
    one: 'Nothing more is read here: the plan asks for {count} reading. If it was a slip, correct it.',
    other:
      'Nothing more is read here: the plan asks for {count} readings, and for a third only where two disagree. If one was a slip, correct it.',
  },
  'aside-place-taken':
    'A reading is in this place already. This one is kept aside until the head baker settles it; do not send it again.',
  'aside-corrected':
    'Somebody corrected this reading meanwhile. Your correction is kept aside until the head baker settles it; do not send it again.',
  'aside-id-taken':
    'Another reading is in the book under this one’s number. This one is kept aside until the head baker settles it; do not send it again.',
  'aside-of-aside':
    'The reading that this corrects is kept aside. So is the correction, until the head baker settles both; do not send it again.',
  'aside-trial-closed':
    'The readings of this trial were closed before this came. It is kept as a proposed amendment, and a second person decides on it; do not send it again.',
  'readings-not-closed': 'The readings of this trial are not closed. Correct the reading itself.',
  'nothing-sealed':
    'The readings of this trial ended before Evendough sealed them, so there is nothing that an amendment could be held against.',
  'amendments-broken':
    'An amendment of this trial is not what the record says of it. Nothing more is amended until that is cleared up; tell the owner.',
  'no-such-closed-reading':
    'No reading was closed in this place. Look at dough, measure, piece and repeat, or propose it as one that was missing.',
  'reading-closed-there': 'A reading was closed in this place. Propose another value for it.',
  'dough-out-already': 'This dough does not count already.',
  'amendment-waits-already': '{who} proposed an amendment here at {at}, and nobody has decided on it yet.',
  'amendment-decided': '{who} decided on this at {at}. It stands.',
  'own-found-cause': 'You found this, so a second person has to see it and sign it.',
  'own-amendment': 'You proposed this, so a second person decides on it.',
  'nothing-amended': 'No amendment was accepted, so there is nothing beside the first result.',
  'slip-signed': 'It is signed already that the first result rested on a slip.',
  'slip-signed-by-you': 'You have signed this already. It waits for another signature.',
  'settle-reading-first': 'The reading that this corrects is kept aside itself. Settle that one first.',
  'entry-taken-meanwhile':
    '{who} settled this at {at} and put it into the book: {reason}. Nothing is left to do here; what you typed was not kept.',
  'entry-left-meanwhile':
    '{who} settled this at {at} and left it aside: {reason}. Nothing is left to do here; what you typed was not kept.',
  'entry-not-possible':
    'As it was sent, this cannot be a reading of this batch: it is no amount of the measure, or of no piece there is. Leave it aside, and correct the reading by hand if it is wrong.',
  'entry-not-kept':
    'The book could not keep this one and does not know why; the others are not held up. Tell whoever looks after this install.',
  'correction-wants-pin':
    'What is corrected after ten minutes, or of somebody else, wants the PIN of who corrects it. Type the PIN, and it goes on.',
  'correction-not-yours': 'You can correct your own readings of this shift. Ask the head baker for others.',
} as const
