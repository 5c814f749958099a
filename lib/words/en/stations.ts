/** How tablets on the bench come in: the page at the desk, and the one that a tablet sees before it trusts the bakery. */
export const stations = {
  title: 'Stations',
  headlineFront: 'Tablets come in over https',
  headlineProxy: 'Tablets come in through your proxy',
  headlineNone: 'Tablets cannot come in yet',
  about: 'About this page',
  https: 'https',
  httpsFront: 'on, by this install itself',
  httpsProxy: 'on, by a proxy in front of this install',
  httpsNone: 'off: only the machine itself can open this install',
  address: 'Address',
  port: 'Why https',
  portText:
    'A tablet keeps a sign-in, and later what it has not sent yet, only for an address that it trusts. The address stays the same for good: under another one a tablet starts anew.',
  noneWord: 'Not yet',
  none: 'This install is at {address}, which no other device can open. Whoever runs it starts it with “npm start -- --lan”, or puts a proxy with a certificate in front of it.',
  proxyText:
    'Open this address on the tablet. Nothing has to be installed there, because the certificate is your proxy’s.',
  trustTitle: '1. The tablet trusts this bakery',
  trustNote: 'Once for each tablet, with both in the same network.',
  trustText:
    'Open this page on the tablet and follow it. It comes without https, so before you switch anything on, compare the fingerprint that the tablet shows with the one below.',
  trustSeveral: 'There are several addresses because this machine is in several networks: take the one that opens.',
  trustPicture: 'Picture to scan for the page on trusting',
  openTitle: '2. The tablet opens the bakery',
  openText: 'Then open this address, and keep it on the tablet’s home screen.',
  openPicture: 'Picture to scan for the address',
  certificateTitle: 'The certificate that tablets trust',
  certificateNote: 'Compare with these on a device whose browser gave no warning of this page.',
  certificateName: 'Name',
  fingerprint: 'Fingerprint (SHA-256)',
  thumbprint: 'Thumbprint (SHA-1), which Windows shows',
  ends: 'Holds until',
  vouchesFor: 'Made for',
  vouchesForText: 'web pages at {name} and in the network {networks}, and nothing else',
  steps: 'Steps by device',
  untried: 'Not tried on a device: the names in its settings may differ.',
  devices: {
    ipad: {
      title: 'iPad and iPhone',
      first: 'In Safari, open the page on trusting, tap “Profile for iPad and iPhone”, and allow the download.',
      second: 'In Settings, tap “Profile Downloaded”. Under “More Details” compare the fingerprint, then install it.',
      third: 'In Settings, under General, About, Certificate Trust Settings, switch the certificate on.',
      fourth: 'Open the https address in Safari.',
    },
    android: {
      title: 'Android',
      first: 'In Chrome, open the page on trusting and tap “Certificate”. The file is kept under Downloads.',
      second:
        'In Settings, search for “CA certificate”, choose to install one, and pick the file. Android warns of every such certificate that others may read along.',
      third:
        'Under the trusted credentials of the user, open it and compare the fingerprint. If it differs, remove it at once.',
      fourth: 'Open the https address in Chrome.',
    },
    windows: {
      title: 'Windows',
      first: 'In Edge or Chrome, open the page on trusting, tap “Certificate”, and open the file.',
      second: 'Choose “Install Certificate”, “Current User”, and the store “Trusted Root Certification Authorities”.',
      third: 'Windows asks once more and shows a thumbprint: compare it before you say yes.',
      fourth: 'Open the https address in Edge or Chrome.',
    },
  },
  toTeam: 'Team',
  /** The page over plain http that a tablet opens before it trusts the bakery. */
  door: {
    title: 'Trust this bakery',
    lead: 'This tablet is to work for the bakery at {address}. It has to trust the bakery’s own certificate first.',
    compare:
      'This page comes without https, so somebody in the network could have changed it. Before you switch the certificate on, compare the fingerprint that the tablet itself shows of it with the one at the desk (Team, Stations). The one below is only as sure as this page.',
    certificate: 'Certificate',
    profile: 'Profile for iPad and iPhone',
    profileText: 'The certificate by which this device knows the bakery.',
    then: 'Then open',
    notHere: 'There is nothing else here.',
  },
  /** What the front says itself, before the app hears of a request. */
  front: {
    odd: 'This request could be read in two ways, so it was not read at all.',
    slow: 'The request took too long to come in. Send it again.',
    large: 'This is more than a request may bring.',
    elsewhere: 'The bakery is at {address}, and not at the address that was asked for.',
    away: 'Evendough does not answer at the moment. Try again in a minute.',
  },
} as const
