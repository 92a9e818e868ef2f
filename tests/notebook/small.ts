/** A small sound notebook, whole, for tests that show what they start from. */
export const SMALL = `---
winterkeep: 1
title: A small sound notebook
invented: true # nobody's
farm:
  place: { name: Nowhere, latitudeDeg: 57, longitudeDeg: 15 }
  winter: { start: 2025-11-01, end: 2026-04-30 }
  weather: { file: balticHills.csv, year: 2017 }
  soil: { texture: loam }
  herd:
    - { name: cows, class: sucklerCow, head: 16, weightKg: 620 } # counted in October
    - { name: bull, class: bull, head: 1, weightKg: 950 }
  feed:
    - { feed: hay, share: 0.6 }
    - { feed: haylage, share: 0.4 }
  materials:
    - { material: barleyStraw, tonnes: 50 }
    - { material: softwoodChips, tonnes: 30 }
  land: { receivingHa: 20 }
  money:
    currency: EUR
    year: 2024
    labourPerHour: 15   # what a day elsewhere would bring
scenarios:
  - name: Paddock
    system: outwintered
    because: As it is
  # the one we hope for
  - name: Deep bed
    system: deep-bedded
    because: 'To see'
    bed: { mix: [{ material: barleyStraw, share: 1 }] }
---

# Words

The bed keeps \`=nitrogenKeptKg of Deep bed\`,
of \`=nitrogenExcretedKg\` dropped; \`code\` is code.

\`\`\`ledger
element: nitrogen
\`\`\`

\`\`\`js
notACell()
\`\`\`

- a list with a fence that is no cell

  \`\`\`cards
  \`\`\`

\`\`\`sweep with a word after it
over: rainFactor
measure: netCost
\`\`\`
`;
