# SPDX-License-Identifier: MIT
"""What the built-in book answers. Facts of the trade: common practice, no source, unless one is named."""
from program import ProgramTest, main, run

ALL = ("--examined", "all", "--history", "none")


class OneVariant(ProgramTest):
    def test_one_palmar_crease_reaches_nobody_and_says_why(self):
        a = self.assess("-f", "single transverse palmar crease", *ALL)
        self.assertEqual(self.verdict(a, "genetics"), "not-suggested")
        self.assertEqual(self.rules(a, "genetics"), ["three-independent-minor-variants"])
        self.assertIn("1 of 3", self.referral(a, "genetics")["reasons"][0]["lacks"][0])
        self.assertIsNone(a["urgency"])

    def test_tongue_tie_never_counts(self):
        a = self.assess("-f", "tongue-tie", *ALL)
        self.assertEqual([t["value"] for t in a["tallies"]], ["0", "0"])
        self.assertEqual(self.verdict(a, "genetics"), "not-suggested")

    def test_a_little_finger_nubbin_never_fires_the_extra_digit_rule(self):
        a = self.assess("-f", "little-finger-nubbin", *ALL)
        self.assertIsNone(a["urgency"])
        self.assertTrue(all(r["verdict"] == "not-suggested" for r in a["referrals"]))

    def test_an_extra_digit_is_referred(self):
        a = self.assess("-f", "postaxial-polydactyly-hand; left", *ALL)
        self.assertIsNotNone(a["urgency"])

    def test_pectus_alone_is_no_genetics_referral(self):
        a = self.assess("-f", "pectus-excavatum", *ALL)
        self.assertEqual(self.verdict(a, "genetics"), "not-suggested")

    def test_normal_skin_is_set_aside(self):
        a = self.assess("-f", "blue-grey-macule", "-f", "erythema-toxicum", *ALL)
        self.assertIsNone(a["urgency"])
        self.assertEqual({s["finding"] for s in a["set_aside"]}, {"blue-grey-macule", "erythema-toxicum"})

    def test_hydrocele_and_reducible_umbilical_hernia_are_watched(self):
        a = self.assess("-f", "hydrocele", "-f", "umbilical-hernia", "--sex", "male", *ALL)
        self.assertEqual(self.verdict(a, "surgery"), "not-suggested")


class Together(ProgramTest):
    THREE = ("-f", "low-set ears", "-f", "single transverse palmar crease", "-f", "supernumerary nipple")

    def test_three_independent_minor_variants(self):
        a = self.assess(*self.THREE, *ALL)
        self.assertEqual(self.verdict(a, "genetics"), "suggested")
        self.assertIn("three-independent-minor-variants", self.rules(a, "genetics"))
        self.assertLessEqual({"low-set-ears", "single-transverse-palmar-crease", "supernumerary-nipple"},
                             self.evidence(a, "genetics"))

    def test_the_same_when_nothing_is_marked_examined(self):
        a = self.assess(*self.THREE)
        self.assertEqual(self.verdict(a, "genetics"), "suggested")

    def test_the_range_of_the_published_risk_is_printed(self):
        # Leppig 1987 (19.6 %), Mehes 1973 (26 %), Marden 1964 (90 %): never the highest figure alone.
        text = run("assess", *self.THREE, *ALL).out
        for figure in ("19.6", "26", "90"):
            self.assertIn(figure, text)

    def test_a_familial_variant_is_set_aside_and_named(self):
        a = self.assess("-f", "low-set ears; familial", "-f", "single transverse palmar crease", "-f", "supernumerary nipple", *ALL)
        self.assertEqual(self.verdict(a, "genetics"), "not-suggested")
        self.assertIn(("low-set-ears", "familial"), {(s["finding"], s["why"]) for s in a["set_aside"]})

    def test_low_and_rotated_ears_and_a_web_are_one_field(self):
        a = self.assess("-f", "low-set ears", "-f", "posteriorly rotated ears", "-f", "webbed neck", "--sex", "male", *ALL)
        self.assertEqual(next(t for t in a["tallies"] if t["tally"] == "minor-variants")["value"], "1")
        self.assertEqual(self.verdict(a, "genetics"), "not-suggested")

    def test_webbed_neck_alone_in_a_girl_by_its_own_rule(self):
        a = self.assess("-f", "webbed neck", "--sex", "female", *ALL)
        self.assertEqual(self.verdict(a, "genetics"), "suggested")
        self.assertIn("webbed-neck-in-a-girl", self.rules(a, "genetics"))
        self.assertEqual(self.verdict(self.assess("-f", "webbed neck", "--sex", "male", *ALL), "genetics"), "not-suggested")

    def test_two_variants_alone_do_not_refer(self):
        a = self.assess("-f", "low-set ears", "-f", "single transverse palmar crease", *ALL)
        self.assertEqual(self.verdict(a, "genetics"), "not-suggested")

    def test_one_major_with_two_minors(self):
        a = self.assess("-f", "clubfoot; left", "-f", "low-set ears", "-f", "single transverse palmar crease", *ALL)
        self.assertIn("one-major-two-minor", self.rules(a, "genetics"))


class Eyes(ProgramTest):
    def test_a_white_pupil(self):
        for rest in ((), ALL):
            a = self.assess("-f", "white pupil", *rest)
            self.assertEqual(self.referral(a, "ophthalmology")["urgency"], "same-day")
            self.assertEqual(self.verdict(a, "genetics"), "suggested")

    def test_a_look_at_the_eyes_does_not_exclude_a_cataract(self):
        a = self.assess("-f", "epicanthal folds", "--examined", "eyes-inspection")
        eyes = self.referral(a, "ophthalmology")
        self.assertEqual(eyes["verdict"], "unsettled")
        self.assertIn("red-reflex", [s["step"] for s in eyes["settled_by"]])

    def test_red_reflex_not_examined_names_the_step(self):
        a = self.assess("--examined", "all,except=red-reflex", "--history", "none", "--sex", "female")
        eyes = self.referral(a, "ophthalmology")
        self.assertEqual((eyes["verdict"], eyes["if_rest_normal"]), ("unsettled", "not-suggested"))
        self.assertEqual(eyes["settled_by"][0]["step"], "red-reflex")
        text = run("assess", "--examined", "all,except=red-reflex", "--history", "none", "--sex", "female").out
        self.assertIn("red reflex", " ".join(text.splitlines()[:3]))


class OtherServices(ProgramTest):
    def urgency(self, finding, service, *more):
        return self.referral(self.assess("-f", finding, *more), service)["urgency"]

    def test_emergencies_reach_the_senior_clinician(self):
        self.assertEqual(self.urgency("subgaleal-haemorrhage", "senior"), "emergency")
        self.assertEqual(self.urgency("bilateral-choanal-atresia", "senior"), "emergency")
        self.assertEqual(self.urgency("bilateral-choanal-atresia", "ent"), "emergency")

    def test_one_blocked_choana_is_urgent_for_ent_and_genetics(self):
        a = self.assess("-f", "choanal-atresia; left", *ALL)
        self.assertEqual(self.referral(a, "ent")["urgency"], "urgent")
        self.assertEqual(self.verdict(a, "genetics"), "suggested")

    def test_no_anus_is_a_surgical_emergency(self):
        self.assertEqual(self.urgency("imperforate-anus", "surgery"), "emergency")

    def test_weak_femoral_pulses_the_same_day(self):
        self.assertEqual(self.urgency("weak-femoral-pulses", "cardiology"), "same-day")

    def test_cleft_reaches_the_cleft_team(self):
        self.assertEqual(self.verdict(self.assess("-f", "cleft-palate"), "plastics"), "suggested")

    def test_both_testes_impalpable(self):
        a = self.assess("-f", "bilateral-impalpable-testes")
        self.assertEqual(self.referral(a, "endocrinology")["urgency"], "same-day")
        self.assertEqual(self.referral(a, "urology")["urgency"], "same-day")

    def test_a_dimple_whose_base_is_not_seen(self):
        # Kriss and Desai 1998: simple dimples 0 of 160 with dysraphism, atypical ones 8 of 20.
        self.assertEqual(self.verdict(self.assess("-f", "atypical-sacral-dimple", *ALL), "neurosurgery"), "suggested")
        self.assertEqual(self.verdict(self.assess("-f", "simple-sacral-dimple", *ALL), "neurosurgery"), "not-suggested")

    def test_breech_gives_a_hip_ultrasound_at_four_to_six_weeks(self):
        # AAP 2016: imaging despite a normal examination after breech presentation.
        a = self.assess("--history", "breech-presentation", "--examined", "all", "--born", "2031-04-02")
        windows = {(f["from_date"], f["to_date"]) for f in a["follow_up"]}
        self.assertIn(("2031-04-30", "2031-05-14"), windows)

    def test_cephalohaematoma_is_watched_for_jaundice_and_not_referred(self):
        a = self.assess("-f", "cephalohaematoma", *ALL)
        self.assertIsNone(a["urgency"])


if __name__ == "__main__":
    main()
