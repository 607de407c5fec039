/** What each caution forbids as long as it stands: shown with the caution, and said when it speaks against something. */
export const cautionsEnUs = {
  'caution.liftingPoint.forbids':
    'A lifting point is not to be used. Only owner or manager puts it on a lift that grips points, and says in the caution which points are used.',
  'caution.electricDrive.forbids':
    'Electric drive: it may move without a sound. Follow the vehicle maker’s instructions for high voltage.',
  'caution.gasTank.forbids': 'Gas tank: gas may gather low. Over a pit it is marked, so air the pit first.',
  'caution.highVoltageLive.forbids':
    'High voltage is live. Only a person with the skill for high voltage starts work; no starting up, no road test, not driven, not handed back by road.',
  'caution.highVoltageDead.forbids':
    'High voltage is proven dead. No starting up, no road test, not driven, not handed back by road.',
  'caution.airbagUnplugged.forbids': 'An airbag is unplugged. No road test, not handed back by road.',
  'caution.fuelOpen.forbids':
    'Fuel is open. No starting up, no road test, not driven, not over a pit, no hot work in this bay or the next, not handed back by road.',
  'caution.brakesOpen.forbids':
    'Brakes are open. No road test; moved only on dollies or towed, with a name; not handed back by road.',
  'caution.noOil.forbids': 'There is no oil in it. No starting up, no road test, not driven, not handed back by road.',
  'caution.wheelsNotTorqued.forbids': 'Wheel fasteners are not torqued. No road test, not handed back by road.',
  'caution.batteryOff.forbids': 'The battery is disconnected. No road test, not handed back by road.',
  'caution.onStands.forbids': 'It is on stands. It is not moved, not tested on the road and not handed back.',
  'caution.hotWork.forbids':
    'Hot work is going on. No open fuel in this bay or the next; no road test, not handed back by road.',
  'caution.pitOpen.forbids': 'The pit is open. It is not moved, not tested on the road and not handed back.',
  'caution.doNotStart.forbids':
    'A tag says: do not start. No starting up, no road test, not driven, not handed back by road.',
  'caution.doNotMove.forbids': 'A tag says: do not move. It is not moved, not tested on the road and not handed back.',
  'caution.other.forbids': 'Read what the caution says before you go on.',
} as const;
