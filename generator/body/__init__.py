"""Turns joint angles into a body in space: skeleton, skin, contact, movement, gravity moment; pure geometry.

Axes after the International Society of Biomechanics (Wu et al. 2002, J Biomech 35:543; 2005, J Biomech
38:981): X forward, Y up, Z to the body's right; the same in every segment at neutral zero. All lengths
are fractions of stature. The operated side is the body's right; a drawing mirrors for the left.
"""
