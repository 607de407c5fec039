export const refusalsCustomerEnGb = {
  'refusal.customer.nameBlank': 'Enter the name of the customer.',
  'refusal.contact.nameBlank': 'Enter the name of the contact.',
  'refusal.customer.erased':
    'The personal data of this customer was erased on request. Enter them as a new customer if they come again.',
  'refusal.standing.alreadyThere': 'This standing go-ahead is recorded already.',
  'refusal.standing.ofOtherCustomer':
    '{table, select, job {That job is another customer’s. Choose a job of this customer.} other {That vehicle is another customer’s. Choose a vehicle of this customer.}}',
  'refusal.standing.jobOfOtherVehicle':
    'Job {number} is of another vehicle than the one named. Name the vehicle or the job, not both.',
  'refusal.standing.dayPast': 'The last day of this standing go-ahead is over already. Choose a later day, or none.',
  'refusal.standing.orderNumberMissing': 'A fleet limit comes with an order number. Ask the fleet for it.',
  'refusal.standing.ended': 'This standing go-ahead was ended already.',
  'refusal.contactEntry.alreadyThere': 'This entry is in the contact log already.',
  'refusal.contactEntry.ofOtherVehicle':
    '{table, select, job {The job named with this entry is of another vehicle.} followUp {The follow-up named with this entry is of another vehicle.} other {The call named with this entry is about another vehicle.}} Choose one of this vehicle.',
  'refusal.contactEntry.answerMissing': 'You reached somebody. Say in words what they answered.',
  'refusal.contactEntry.nextTryPast': 'The next try lies in the past. Choose a later time, or none.',
  'refusal.contactEntry.notYours':
    'In this shop the desk keeps the contact log. Tell the desk or the manager what was said.',
} as const;
