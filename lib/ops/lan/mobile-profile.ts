/** A configuration profile by which iPads and iPhones take a certificate (Apple's property list, type `root`). */
export function mobileProfile(of: {
  name: string
  description: string
  der: Buffer
  ids: readonly [profile: string, certificate: string]
}): string {
  const [profileId, certificateId] = of.ids
  const text = (value: string) => `<string>${safe(value)}</string>`
  return `<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE plist PUBLIC "-//Apple//DTD PLIST 1.0//EN" "http://www.apple.com/DTDs/PropertyList-1.0.dtd">
<plist version="1.0"><dict>
<key>PayloadType</key>${text('Configuration')}
<key>PayloadVersion</key><integer>1</integer>
<key>PayloadIdentifier</key>${text(`evendough.${profileId}`)}
<key>PayloadUUID</key>${text(profileId)}
<key>PayloadDisplayName</key>${text(of.name)}
<key>PayloadDescription</key>${text(of.description)}
<key>PayloadContent</key><array><dict>
<key>PayloadType</key>${text('com.apple.security.root')}
<key>PayloadVersion</key><integer>1</integer>
<key>PayloadIdentifier</key>${text(`evendough.${certificateId}`)}
<key>PayloadUUID</key>${text(certificateId)}
<key>PayloadDisplayName</key>${text(of.name)}
<key>PayloadContent</key><data>${of.der.toString('base64')}</data>
</dict></array>
</dict></plist>
`
}

function safe(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;')
}
