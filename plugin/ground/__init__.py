"""The ground between camera and subject: geodesics and the curved Earth."""
