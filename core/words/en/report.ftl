card-title = Wheel service card
