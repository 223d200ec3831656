/** The language's sample: a side chair for the boathouse mess room. */
export const sample = `# Side chair for the boathouse mess room, eight off.
chair "Boathouse mess chair"
units mm
sitter adult
timber white-ash moisture 9%

let seat-height = 440 within 420 to 470
let back-lean = 6.5deg

joint rail-tenon {
  tenon thick 1/3 of rail, long 28
  shoulders top 12, bottom 6
  haunch long 10
  mitre                     # tenons that meet in a post are mitred
  glue pva
}

joint crest-tenon {
  tenon thick 8, long 18
  shoulders top 10, bottom 10
}

joint slat-tenon {
  tenon thick full, long 12
  shoulders top 3, bottom 3
}

# Tapered to the foot so that they look light.
post front pair {
  section 40 x 40
  foot out 205, back 20
  height seat-height - 12
  taper 30 x 30 from 250 to foot
}

# Sawn from one board, two legs nested.
post back pair {
  section 36 x 36
  foot out 175, back 452
  height 930
  kick 4deg below 100 over 50
  rake back-lean above 475 over 90
  taper 28 x 26 from 480 to top
}

rail seat-front {
  across front
  section 22 x 70
  up seat-height - 12
  face inset 3
  arch 14 below
  joined rail-tenon
}

rail seat-side pair {
  from front to back
  section 22 x 70
  up seat-height - 12
  face inset 3
  joined rail-tenon
  end back {
    tenon square            # square to the post, not in line with the rail
  }
}

rail seat-back {
  across back
  section 22 x 70
  up seat-height - 12
  face inset 3
  joined rail-tenon
}

rail side-stretcher pair {
  from front to back
  section 18 x 40
  up 190
  fall 15
  face centred
  joined rail-tenon
}

rail back-lower {
  across back
  section 18 x 45
  up 570
  stand with posts          # leans with the posts, not plumb
  joined rail-tenon
}

rail crest {
  across back
  section 20 x 90
  up 925
  stand with posts
  bow 22 back
  joined crest-tenon
}

slat back-slat {
  from back-lower to crest
  count 4 even
  section 9 x 38
  joined slat-tenon
}

seat drop-in {
  on seat-front, seat-side, seat-back
  thick 40
  proud 12
  sag 15
}

angle back-rake {
  between seat, back above 530
  limit 5deg to 7deg
}

trim back 10                # off the back feet, so that the seat falls to the back

require weight at most 5.5kg
require seat.slope from 1deg to 4deg

accept tenon-too-thin on back-slat because "let in dry; they carry nothing"

note 2026-03-14 "First one sat in for an hour at table: back too upright. back-lean 5 to 6.5."
note 2026-04-02 "Seat too flat: 10 off the back feet."
`;
