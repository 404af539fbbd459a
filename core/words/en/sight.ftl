# Reading a sidewall from a photo.
sight-no-models = The files for reading photos are not on this device ({ $folder }). Run core/models/fetch to get them, or type what stands on the sidewall.
sight-not-the-models = The files for reading photos are damaged or others. Run core/models/fetch again, or type what stands on the sidewall.
sight-ring-outside = The circle does not lie on the photo. Draw it on the tire's outer edge.

# What a reading is worth.
sight-confirm = Compare it with the tire, then confirm it.
sight-unsure = The size can't be read for sure. Type it, or take another photo.

# The one close-up that would settle most.
sight-ask-size = Take one close-up of the size, square to the sidewall.
sight-ask-size-at = Take one close-up near { $hour } o'clock, where the size seems to stand.
sight-ask-date = For the date, take one close-up of the four digits behind DOT. They may be on the other side.
sight-ask-date-at = For the date, take one close-up near { $hour } o'clock, of the four digits behind DOT.
sight-ask-number = For the whole DOT number, take one close-up of it, square to the sidewall.
sight-ask-number-at = For the whole DOT number, take one close-up of it near { $hour } o'clock.

# What to do differently.
sight-closer = Move closer, so that the wheel fills the picture.
sight-hold-square = Hold the camera square to the wheel.
sight-light-from-the-side = Light the sidewall from the side, so that the letters throw shadows.
sight-wipe = Wipe the lettering with a damp cloth, then take it again.
sight-nothing-to-read = No lettering was found. Show the whole wheel, or one close-up of its lettering.

# Suggestions on a screen.
sight-suggestion = { $text } ({ $odds } %)
sight-suggestion-spoken = { $text }, { $odds } percent likely
sight-odds = { $odds } % likely
sight-arrow-fits = The rotation arrow fits this side of the vehicle ({ $odds } %).
sight-arrow-other-side = The rotation arrow seems made for the other side ({ $odds } %): look at it.
sight-chalk = The chalk on it seems to read { $mark } ({ $odds } %).
sight-chalk-fits = The chalk on it reads { $mark }, the mark of this tire ({ $odds } %).
sight-chalk-of-another = The chalk on it seems to read { $mark }, the mark of another tire ({ $odds } %): look at it.
sight-not-on-this-side = Not on this side
sight-not-read = Nothing was read
