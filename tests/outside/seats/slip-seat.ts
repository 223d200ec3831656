/** The undercarriage of a slip chair: its seat, its legs right through and wedged, its stretchers. */
export const slipSeat = `chair "Slip chair"
units mm
timber white-ash moisture 9%

joint leg-socket {
  round 28 to 22
  through wedged
  glue hide
}

joint stretcher-tenon {
  round 14, long 20
  glue hide
}

seat solid {
  up 430
  fall 12
  thick 44
  deep 400
  wide 410 at 12
  wide 440 at 150
  wide 392 at 290
  wide 300 at 352
  corner 25
  grain fore-and-aft
  timber american-elm moisture 9%
}

post front-leg pair {
  into seat at out 155, back 80
  splay 9deg
  rake 7deg foot forward
  round 40
  shape at foot round 26
  shape at 160 round 40
  shape at top round 28
  joined leg-socket
}

post back-leg pair {
  into seat at out 108, back 298
  splay 12deg
  rake 16deg foot back
  round 40
  shape at foot round 26
  shape at 150 round 40
  shape at top round 28
  joined leg-socket
}

rail side-stretcher pair {
  from front-leg to back-leg
  round 26
  taper 18 to ends
  up 170
  fall 20
  joined stretcher-tenon
}

rail middle-stretcher {
  across side-stretcher at 1/2
  round 26
  taper 18 to ends
  joined stretcher-tenon
}
`;
