/*
 * An invented rehearsal of seven minutes and about a thousand words, unlabelled, in paragraphs of about 20 seconds
 * with one time each: the form in which speech-to-text comes and the one that costs most to mark, because the roles
 * must be worked out from the words. It measures time only; nobody would counsel like this.
 */
const CANDIDATE = [
  "hello my name is ana and i'm the pharmacist today can i check your name and your date of birth please",
  "thank you so i wanted to show you how to use your new inhaler is that okay it should take about five minutes",
  "have you ever used an inhaler like this before and are you allergic to any medicines at all",
  "so this is your reliever inhaler and you use it when you feel short of breath or wheezy it opens up the airways quickly",
  "first of all take the cap off and check there is nothing inside the mouthpiece and then give it a really good shake",
  "because it's a new one you need to spray it into the air a couple of times away from your face before the first use",
  "breathe out gently as far as is comfortable then put the mouthpiece between your teeth and close your lips around it",
  "start to breathe in slowly and press down on the canister once and carry on breathing in slowly and deeply",
  "take it out of your mouth and hold your breath for about ten seconds or as long as is comfortable then breathe out",
  "if you need a second puff wait about half a minute and shake it again before you take the next one",
  "you should clean it once a week so take the metal canister out and rinse the plastic under warm water and let it dry",
  "keep it at room temperature away from heat and don't leave it in a hot car and never puncture the canister",
  "if you find you need it more than three times a week come and see us or speak to your doctor about it",
  "you might notice your hands shake a bit or your heart going faster that usually settles down in a few minutes",
  "if it doesn't help and you can't talk or you are getting worse call an ambulance straight away and keep taking puffs",
  "just so i know i explained it clearly could you show me in your own words how you are going to use it at home",
  "is there anything else you would like to ask me before you go today and here is our number if you need us",
];
const PATIENT = [
  "yes it's sam example the first of may nineteen eighty",
  "okay that's fine no i've never had one of these",
  "no no allergies that i know of um not that i know",
  "how often can i use it in a day",
  "okay right and what if i forget to shake it",
  "so i shake it and breathe out and then press and breathe in",
  "okay thanks yes that makes sense",
];

/** Seconds between the times of two paragraphs. */
const STEP = 20;
const LENGTH = 420;

export function sevenMinutes(): string {
  const paragraphs: string[] = [];
  let sentence = 0;
  for (let start = 0; start < LENGTH; start += STEP) {
    const words = [CANDIDATE[sentence % CANDIDATE.length]!, PATIENT[sentence % PATIENT.length]!, CANDIDATE[(sentence + 1) % CANDIDATE.length]!];
    sentence += sentence % 3 === 2 ? 2 : 1;
    paragraphs.push(`[${Math.floor(start / 60)}:${String(start % 60).padStart(2, "0")}] ${words.join(" ")}`);
  }
  return `${paragraphs.join("\n\n")}\n`;
}
