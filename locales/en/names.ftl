# Names of the model's things, by key. A message `KIND-KEY` exists for every key of every kind.
#
# Quantities: the name; `.short` for use inside a sentence; `.over` and `.under` say a miss of
# $amount above and below the wanted range. Decisions: the name; `.over` and `.under` say by
# $amount how the hands leave the usual way.

language-name = English

## How a miss reads

miss-high = { $amount } too high
miss-low = { $amount } too low
miss-long = { $amount } too long
miss-short = { $amount } too short
miss-wide = { $amount } too wide
miss-narrow = { $amount } too narrow
miss-much = { $amount } too much
miss-little = { $amount } too little
miss-left = { $amount } too far left
miss-right = { $amount } too far right

## What is seen

quantity-hem_back = Hem above the floor at the back
    .short = hem at the back
    .over = { miss-high }
    .under = { miss-low }
quantity-uwamae_corner = Outer corner (uwamae) above the floor
    .short = outer corner (uwamae)
    .over = { miss-high }
    .under = { miss-low }
quantity-shitamae_above_uwamae = Inner corner (shitamae) above the outer one
    .short = inner corner (shitamae) over the outer
    .over = { miss-high }
    .under = { miss-low }
quantity-hem_taper = Taper of the skirt, hip to hem
    .short = taper of the skirt
    .over = { miss-much }
    .under = { miss-little }
quantity-hem_loop = Round the hem
    .short = hem all round
    .over = { miss-wide }
    .under = { miss-narrow }
quantity-front_cover = Front cover: outer edge in front of the right side line
    .short = outer edge (uwamae) from the side line
    .over = { $amount } too far in front
    .under = { $amount } too far behind
quantity-inner_cover = Inner panel (shitamae) past the centre front
    .short = inner panel (shitamae)
    .over = { $amount } too far round
    .under = { $amount } short
quantity-wrap_ease = Outer edge past the right side seam
    .short = outer edge past the side seam
    .over = { miss-much }
    .under = { $amount } short
quantity-back_seam_hip = Back seam off the centre at the hip (left +, right −)
    .short = back seam at the hip
    .over = { miss-left }
    .under = { miss-right }
quantity-back_seam_top = Back seam off the centre above the fold (left +, right −)
    .short = back seam above the fold
    .over = { miss-left }
    .under = { miss-right }
quantity-back_seam_bend = Bend of the back seam, hip against back (left +, right −)
    .short = bend of the back seam
    .over = { $amount } too much to the left at the hip
    .under = { $amount } too much to the right at the hip
quantity-koshihimo_over_hip_bone = Waist tie (koshihimo) above the hip bone
    .short = waist tie (koshihimo)
    .over = { miss-high }
    .under = { miss-low }
quantity-koshihimo_slope = Waist tie (koshihimo) lower in front than at the back
    .short = slope of the waist tie
    .over = { $amount } too steep
    .under = { $amount } too flat
quantity-collar_end_clearance = Collar end (erisaki) below the waist tie
    .short = collar end (erisaki) below the tie
    .over = { miss-low }
    .under = { miss-high }
quantity-collar_end_visible = Collar end (erisaki) showing below the fold
    .short = collar end (erisaki) below the fold
    .over = { miss-much }
    .under = { miss-little }
quantity-fold_front = Fold (ohashori) in front
    .short = fold (ohashori) in front
    .over = { miss-long }
    .under = { miss-short }
quantity-fold_right = Fold (ohashori) at the right side
    .short = fold (ohashori) at the right
    .over = { miss-long }
    .under = { miss-short }
quantity-fold_back = Fold (ohashori) at the back
    .short = fold (ohashori) at the back
    .over = { miss-long }
    .under = { miss-short }
quantity-fold_slant = Slant of the fold: right side longer than the front
    .short = right end of the fold
    .over = { miss-long }
    .under = { miss-short }
quantity-cloth_front = Spare cloth above the tie, in front
    .short = spare cloth in front
    .over = { miss-much }
    .under = { miss-little }
quantity-cloth_right = Spare cloth above the tie, at the right side
    .short = spare cloth at the right
    .over = { miss-much }
    .under = { miss-little }
quantity-cloth_back = Spare cloth above the tie, at the back
    .short = spare cloth at the back
    .over = { miss-much }
    .under = { miss-little }
quantity-bulk_front = Cloth taken up under the obi, in front
    .short = cloth under the obi in front
    .over = { miss-much }
    .under = { miss-little }
quantity-bulk_right = Cloth taken up under the obi, at the right side
    .short = cloth under the obi at the right
    .over = { miss-much }
    .under = { miss-little }
quantity-bulk_back = Cloth taken up under the obi, at the back
    .short = cloth under the obi at the back
    .over = { miss-much }
    .under = { miss-little }
quantity-nape_drop = Nape drop (emon-nuki)
    .short = nape drop (emon-nuki)
    .over = { $amount } too deep
    .under = { $amount } too shallow
quantity-ridge_setback = Garment's shoulder ridge behind the body's
    .short = shoulder ridge
    .over = { $amount } too far back
    .under = { $amount } too far forward
quantity-juban_crossing = Juban collars cross below the hollow of the throat
    .short = crossing of the juban collars
    .over = { miss-low }
    .under = { miss-high }
quantity-juban_show = Juban collar (han-eri) showing at its widest
    .short = juban collar (han-eri)
    .over = { miss-wide }
    .under = { miss-narrow }
quantity-juban_hold = Overlap of the juban collars above the tie
    .short = hold of the juban collars
    .over = { miss-much }
    .under = { miss-little }
quantity-kimono_hold = Overlap of the kimono collars above the tie
    .short = hold of the kimono collars
    .over = { miss-much }
    .under = { miss-little }
quantity-obi_over_hip_bone = Lower edge of the obi above the hip bone, in front
    .short = lower edge of the obi
    .over = { miss-high }
    .under = { miss-low }
quantity-trunk_step = Step from waist to hip, girth over the padding
    .short = step from waist to hip
    .over = { $amount } too big
    .under = { $amount } too small
quantity-sleeve_short = Sleeve end short of the wrist bone
    .short = sleeves
    .over = { miss-short }
    .under = { miss-long }
quantity-drum_height = Height of the drum (otaiko)
    .short = drum (otaiko)
    .over = { $amount } too tall
    .under = { $amount } too short
quantity-tare_length = Tail below the drum (tare)
    .short = tail (tare)
    .over = { miss-long }
    .under = { miss-short }
quantity-obiage_show = Obiage showing
    .short = obiage
    .over = { miss-wide }
    .under = { miss-narrow }

## What the hands decide

decision-hem_height = Hem above the floor at the back
    .over = hem { $amount } higher than usual
    .under = hem { $amount } lower than usual
decision-uwamae_raise = Raise of the outer front edge (uwamae)
    .over = outer edge (uwamae) raised { $amount } more
    .under = outer edge (uwamae) raised { $amount } less
decision-shitamae_raise = Raise of the inner front edge (shitamae)
    .over = inner edge (shitamae) raised { $amount } more
    .under = inner edge (shitamae) raised { $amount } less
decision-shitamae_fold_back = Inner front edge (shitamae) folded back
    .over = inner edge (shitamae) folded back { $amount }
    .under = inner edge (shitamae) folded back { $amount } less
decision-back_seam_hip = Back seam off the centre at the hip (left +, right −)
    .over = back seam { $amount } to the left
    .under = back seam { $amount } to the right
decision-back_seam_top = Back seam off the centre above the fold (left +, right −)
    .over = back seam above the fold { $amount } to the left
    .under = back seam above the fold { $amount } to the right
decision-koshihimo_back = Height of the waist tie (koshihimo) at the back
    .over = waist tie { $amount } higher at the back
    .under = waist tie { $amount } lower at the back
decision-koshihimo_front = Height of the waist tie (koshihimo) in front
    .over = waist tie { $amount } higher in front
    .under = waist tie { $amount } lower in front
decision-take_up_front = Taken up under the chest tie, in front
    .over = { $amount } taken up in front
    .under = { $amount } less taken up in front
decision-take_up_right = Taken up under the chest tie, at the right side
    .over = { $amount } taken up at the right
    .under = { $amount } less taken up at the right
decision-take_up_back = Taken up under the chest tie, at the back
    .over = { $amount } taken up at the back
    .under = { $amount } less taken up at the back
decision-nape_drop = Nape drop (emon-nuki)
    .over = nape { $amount } deeper
    .under = nape { $amount } shallower
decision-juban_overlap = Juban collar past the centre at the chest tie
    .over = juban collars { $amount } further over
    .under = juban collars { $amount } less over
decision-kimono_overlap = Kimono collar past the centre at the chest tie
    .over = kimono collars { $amount } further over
    .under = kimono collars { $amount } less over
decision-obi_lower_edge = Height of the obi's lower edge, in front
    .over = obi { $amount } higher
    .under = obi { $amount } lower
decision-drum_height = Height of the drum (otaiko)
    .over = drum { $amount } taller
    .under = drum { $amount } shorter
decision-tare_length = Tail below the drum (tare)
    .over = tail (tare) { $amount } longer
    .under = tail (tare) { $amount } shorter
decision-obiage_show = Obiage showing above the obi
    .over = obiage { $amount } wider
    .under = obiage { $amount } narrower
decision-waist_padding = Thickness of padding (hosei) at the waist
    .over = waist padded { $amount } thicker
    .under = waist padded { $amount } thinner
decision-hip_padding = Thickness of padding (hosei) at the hip
    .over = hip padded { $amount } thicker
    .under = hip padded { $amount } thinner

## The body: the name, and how to tape it

sex-women = Woman
sex-men = Man

measure-stature = Stature
    .how = Floor to crown, barefoot.
measure-back_neck_height = Height of the back neck point
    .how = Floor to the bone that stands out at the base of the neck when the head is bent.
measure-side_neck_height = Height of the side neck point
    .how = Floor to where the shoulder ridge meets the neck.
measure-shoulder_height = Height of the shoulder point
    .how = Floor to the outer end of the shoulder bone.
measure-bust_height = Height of the bust
    .how = Floor to the bust point.
measure-under_bust_height = Height under the bust
    .how = Floor to the lower edge of the breast.
measure-waist_height = Height of the waist
    .how = Floor to the narrowest place, midway between lowest rib and hip bone.
measure-navel_height = Height of the navel
    .how = Floor to the navel.
measure-hip_bone_height = Height of the hip bone
    .how = Floor to the point of the hip bone that stands out in front.
measure-hip_height = Height of the hip
    .how = Floor to the fullest place of the buttocks.
measure-crotch_height = Inside leg
    .how = Floor to the crotch.
measure-knee_height = Height of the knee
    .how = Floor to the middle of the knee cap.
measure-ankle_height = Height of the ankle
    .how = Floor to the outer ankle bone.
measure-neck_base_girth = Girth of the neck base
    .how = Round the base of the neck, over the back and side neck points.
measure-bust_girth = Bust
    .how = Round the bust points, level.
measure-under_bust_girth = Under the bust
    .how = Round the ribs just below the breast.
measure-waist_girth = Waist
    .how = Round the natural waist.
measure-navel_girth = Belly
    .how = Round the belly at the navel.
measure-hip_girth = Hip
    .how = Round the fullest place of the buttocks, level.
measure-fullest_girth = Fullest girth (koshi-mawari)
    .how = Round the fullest place anywhere from belly to thighs.
measure-shoulder_breadth = Breadth of the shoulders
    .how = Straight from shoulder point to shoulder point.
measure-spine_to_wrist = Yuki of the body
    .how = Back neck point over the shoulder to the wrist bone, arm lowered 45 degrees.
measure-hand_length = Length of the hand
    .how = Wrist crease to the tip of the middle finger.
measure-hand_breadth = Breadth of the hand
    .how = Across the knuckles, without the thumb.
measure-index_finger_length = Length of the index finger
    .how = Crease at its base to the tip.
measure-finger_breadth = Breadth of a finger
    .how = Four fingers side by side at the middle joint, divided by four.

## The garment: the name, and how to tape it

kind-nagagi = Kimono (nagagi)
kind-yukata = Yukata
cloth-soft = Soft (chirimen, rinzu, most polyester)
cloth-stiff = Stiff (tsumugi, hemp, wool)
cloth-cotton = Cotton
mitake_from-shoulder = From the shoulder ridge
mitake_from-back_seam = From the back seam

part-mitake = Length (mitake)
    .how = To the hem, from the shoulder ridge or along the back seam from the collar.
part-yuki = Centre back to sleeve end (yuki)
    .how = From the back seam straight along the shoulder to the sleeve end.
part-katahaba = Shoulder width (katahaba)
    .how = From the back seam to the sleeve seam.
part-sodehaba = Sleeve width (sodehaba)
    .how = From the sleeve seam to the sleeve end.
part-sodetake = Sleeve drop (sodetake)
    .how = From the shoulder ridge to the lower edge of the sleeve.
part-sodeguchi = Hand opening (sodeguchi)
    .how = From the shoulder ridge down to the end of the opening.
part-sodetsuke = Sleeve joint (sodetsuke)
    .how = From the shoulder ridge down, as far as the sleeve is sewn on.
part-furi = Open sleeve edge (furi)
    .how = The open edge of the sleeve below the joint.
part-miyatsukuchi = Side opening (miyatsukuchi)
    .how = The opening in the side seam under the sleeve.
part-ushirohaba = Back width (ushirohaba)
    .how = From the back seam to the side seam, at the hip.
part-maehaba = Front width (maehaba)
    .how = From the side seam to the okumi seam, at the hip.
part-dakihaba = Front width at the chest (dakihaba)
    .how = From the side to the collar seam, at the lower end of the side opening.
part-okumihaba = Overlap width at the hem (okumihaba)
    .how = The okumi panel at the hem.
part-aizumahaba = Overlap width at the collar end (aizumahaba)
    .how = The okumi panel at the height of the collar end.
part-erishita = Hem to collar end (erishita, tsumashita)
    .how = Along the front edge, from the hem to the end of the collar.
part-okumisagari = Okumi drop (okumisagari)
    .how = From the shoulder ridge down to the point of the okumi panel.
part-erikata_aki = Half neck opening (erikata-aki)
    .how = From the back seam to the end of the neck opening.
part-kurikoshi = Neck set back (kurikoshi)
    .how = How far the neck opening lies behind the shoulder ridge.
part-tsukekomi = Neck depth at the back seam (tsukekomi)
    .how = The extra depth of the neck opening at the back seam.
part-erihaba = Collar width (erihaba)
    .how = The collar at the back, as sewn.

## Occasions

occasion-indoors = Indoors, footwear off
occasion-formal = Formal
occasion-stage = Stage
occasion-everyday = Everyday
occasion-practice = Practice at home

## Where a number comes from, and its unit

origin-taped = taped
origin-completed = completed
origin-photo = from a photo
origin-customary = customary
origin-learned = learned
unit-centimetre = centimetres
unit-kujira_shaku = kujira-shaku
unit-kane_shaku = kane-shaku

## Landmarks and hands

landmark-ankle = ankle bone
landmark-hip_bone = hip bone
landmark-navel = navel
landmark-waist = waist
landmark-under_bust = lower edge of the bust
hand-finger = finger
hand-index_finger = index finger
hand-fist = light fist

## Verdicts and standards

standard-customary = customary
verdict-falls_right = Falls right
verdict-with_care = Good with care
verdict-shows = Faults show
verdict-leave_it = Better left on its hanger

## Published proportions that complete a garment

rule-yuki-sum = yuki = katahaba + sodehaba
rule-yuki-height = yuki = 0.4 × height + 2 cm, height taken as the mitake
rule-shoulder-rest = katahaba = yuki − sodehaba
rule-sleeve-rest = sodehaba = yuki − katahaba
rule-sleeve-split = sodehaba = yuki ÷ 2 + 2.75 bu
rule-sleeve-from-shoulder = sodehaba = katahaba + 5.5 bu
rule-shoulder-from-sleeve = katahaba = sodehaba − 5.5 bu
rule-sodetake-standard = sodetake = 1 shaku 3 sun
rule-sodetake-sum = sodetake = sodetsuke + furi
rule-sodeguchi-standard = sodeguchi = 6 sun
rule-sodetsuke-height = sodetsuke = 5.5 sun below a height of 160 cm, else 6 sun
rule-sodetsuke-rest = sodetsuke = sodetake − furi
rule-furi-rest = furi = sodetake − sodetsuke
rule-miyatsukuchi-standard = miyatsukuchi = 4 sun
rule-ushiro-of-mae = ushirohaba = hip ÷ 4 + 6 cm, the hip being the one the maehaba is tabled for
rule-mae-of-ushiro = maehaba by hip table, the hip being 4 × (ushirohaba − 6 cm)
rule-daki-of-mae = dakihaba = maehaba − 4 bu
rule-okumi-hip = okumihaba = 4 sun, 4.1 from a hip of 100 cm, 4.2 from 105
rule-aizuma-of-okumi = aizumahaba = okumihaba − 2 bu
rule-aizuma-equal = aizumahaba = okumihaba from a hip of 100 cm
rule-okumi-of-aizuma = okumihaba = aizumahaba where that is over the rule
rule-erishita-half = erishita = mitake ÷ 2, at most 2 shaku 2 sun
rule-okumisagari-height = okumisagari = 6 sun, 5.5 up to a height of 150 cm
rule-erikata-aki-standard = erikata-aki = 2.3 sun
rule-kurikoshi-standard = kurikoshi = 7 bu, as cut
rule-tsukekomi-standard = tsukekomi = 4 bu, the middle of 3 to 5
rule-erihaba-wide = erihaba = 3 sun, a wide collar folded when worn
rule-erihaba-narrow = erihaba = 1.5 sun at the back, a sewn narrow collar
