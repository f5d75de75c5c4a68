const scene = JSON.parse(document.getElementById('scene').textContent);
const figures = document.getElementById('pictures');
const viewer = mountViewer(document.getElementById('viewer'), scene, { pictures: [...figures.querySelectorAll('figure')] });
figures.remove();
